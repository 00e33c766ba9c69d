// Puts the strips of a map together, and the figures of a move as the page has them.

import type { Figures, Moved, PlanAnswer, Strip } from "./document";
import type { Heat, Maybe, Row, Settled, Way } from "./types";

/** Two bytes that say that no sound can be there. */
const SILENT = 65535;

/** What a map is once a strip is put into it; a map of something else begins anew. */
export function put(heat: Heat | null, strip: Strip): Heat {
  const isFine = strip.fine ?? false;
  const isSame = heat !== null && !heat.isWhole && isFine && heat.isFine && alike(heat, strip);
  const values = isSame ? heat.values : begun(isFine ? heat : null, strip);
  fill(values, strip);
  const { columns, rows, low_m, high_m, unit, most_hz } = strip;
  return { columns, rows, low_m, high_m, unit, ...(most_hz === undefined ? {} : { most_hz }), values, isFine, isWhole: strip.last ?? false };
}

function alike(heat: Heat, strip: Strip): boolean {
  return heat.columns === strip.columns && heat.rows === strip.rows && isOver(heat, strip);
}

function isOver(heat: Heat, { low_m, high_m }: Strip): boolean {
  return [0, 1].every((i) => Math.abs(heat.low_m[i]! - low_m[i]!) < 1e-6 && Math.abs(heat.high_m[i]! - high_m[i]!) < 0.1);
}

/** Where a finer map begins: with what a rougher one of the same place has. */
function begun(rough: Heat | null, strip: Strip): Maybe[] {
  const { columns, rows } = strip;
  if (rough === null || !isOver(rough, strip)) return new Array<Maybe>(columns * rows).fill(null);
  return Array.from({ length: columns * rows }, (_, i) => {
    const c = Math.floor((((i % columns) + 0.5) * rough.columns) / columns);
    const r = Math.floor(((Math.floor(i / columns) + 0.5) * rough.rows) / rows);
    return rough.values[r * rough.columns + c] ?? null;
  });
}

function fill(values: Maybe[], { columns, rows, from, to, least, per, cells }: Strip): void {
  const bytes = atob(cells);
  let at = 0;
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const far = Math.max(Math.abs(2 * c + 1 - columns), Math.abs(2 * r + 1 - rows));
      if (far < from || far >= to) continue;
      const n = bytes.charCodeAt(at) + 256 * bytes.charCodeAt(at + 1);
      values[r * columns + c] = n === SILENT ? null : (least + n) / per;
      at += 2;
    }
  }
}

/** The figures that an answer has; null: it has none. */
export function figures(answer: Moved, planned: PlanAnswer): Settled | null {
  const { seq, place, spot_m, channels, columns, levels, measures, seats, echoes, phase } = answer;
  if (!place || !spot_m || !channels || !columns || !levels || !measures || !echoes) return null;
  return {
    seq, place, spot_m, channels, measures, echoes, ...(seats ? { seats } : {}), ...(phase ? { phase } : {}),
    drivers: rows(planned, channels, columns),
    response: { frequency_hz: planned.plan.response.frequency_hz, ...levels },
    polar: null, lean: null,
  };
}

function rows(planned: PlanAnswer, channels: Figures["channels"], columns: Figures["columns"]): Row[] {
  const of = new Map(channels.flatMap((c) => c.drivers.map((id) => [id, c] as const)));
  return planned.drivers.map(({ id }, i) => {
    const channel = of.get(id);
    return { id, channel: channel?.id ?? 0, delay_us: channel?.delay_us ?? 0, level_db: columns.level_db[i] ?? null, way: wayOf(columns, i) };
  });
}

function wayOf({ path_m, straight_path_m, arrival_us, field_arrival_us, seen }: Figures["columns"], i: number): Way | null {
  if (!path_m || !straight_path_m || !arrival_us || !field_arrival_us || !seen) return null;
  return { path_m: path_m[i]!, straight_path_m: straight_path_m[i]!, arrival_us: arrival_us[i]!, field_arrival_us: field_arrival_us[i] ?? null, seen: seen[i]! };
}

// Values of the design as the form writes and reads them.

import type { KeyRow } from "./document";
import type { Value } from "./types";

/** A key's number; null where it is none. */
export function numberOf(value: Value | undefined): number | null {
  return typeof value === "number" ? value : null;
}

export function flagged(text: string): string {
  return text === "true" ? "yes" : text === "false" ? "no" : text;
}

/** A value as a field shows it. */
export function written(value: Value): string {
  if (value === null) return "";
  return typeof value === "object" ? list(value) : String(value);
}

function list(value: Value[]): string {
  return value.map((v) => (Array.isArray(v) ? `[${list(v)}]` : String(v))).join(", ");
}

/** What a field's text means; undefined: not a number. */
export function read(key: KeyRow, text: string): Value | undefined {
  const t = text.trim();
  if (t === "") return null;
  switch (key.kind) {
    case "number":
    case "whole": {
      const n = Number(t.replace(",", "."));
      return Number.isFinite(n) ? n : undefined;
    }
    case "flag":
      return t === "true";
    case "list":
      try {
        const isOne = !t.includes(",") && !t.startsWith("[") && key.name.endsWith("absorption");
        return JSON.parse(isOne || (t.startsWith("[") && t.endsWith("]") && !t.startsWith("[[") && !/\]\s*,\s*\[/.test(t)) ? t : `[${t}]`) as Value;
      } catch {
        return undefined;
      }
    default:
      return t;
  }
}

// Whether the body is even all round by ISO 3382-1, as built and with the delays, and how far
// its level strays over all directions. It takes
// as long as a survey of the room, so that it is asked for by a press.

import { survey } from "./api";
import { el, say } from "./dom";
import { nominal } from "./polar";
import type { State } from "./state";
import type { Octave, Spatial } from "./document";
import { decibels, hertz } from "./words";

const ASK = "Is it even all round? Judge by ISO 3382-1";

export function omni(state: State): void {
  const button = el<HTMLButtonElement>("omni-ask");
  let id = "";
  const clear = () => {
    id = state.planned?.id ?? "";
    button.hidden = false;
    button.disabled = false;
    say(button, ASK);
    say(el("omni-say"), "");
  };
  state.on("plan", clear);
  state.on("moved", () => {
    if (button.hidden && state.isFormer) clear();
  });
  button.onclick = async () => {
    const asked = id;
    button.disabled = true;
    say(button, "Judging…");
    try {
      const found = await survey(state.text);
      if (asked !== id) return; // it tells of a design that is no more
      button.hidden = true;
      say(el("omni-say"), `${verdict(found.octaves)} ${overSphere(found.spatial)}`);
    } catch (error) {
      if (asked !== id) return;
      clear();
      say(el("omni-say"), error instanceof Error ? error.message : String(error));
    }
  };
  clear();
}

function verdict(octaves: Octave[]): string {
  const judged = octaves.filter((o) => o.omni_pass !== null && o.omni_as_built_pass !== null);
  if (judged.length === 0) return "ISO 3382-1 judges none of these octaves.";
  const built = passes(judged, (o) => o.omni_as_built_pass === true);
  const aimed = passes(judged, (o) => o.omni_pass === true);
  return `Even all round by ISO 3382-1, whose sources play all drivers in parallel: as built it ${built}; with the delays, which aim at the chair, it ${aimed}.`;
}

/** How far the level strays over all directions. */
function overSphere(spatial: Spatial): string {
  const [built, aimed] = [spatial.as_built_mean_db, spatial.mean_db];
  if (built === null || aimed === null) return "Some directions are silent, so that its deviation over all directions has no figure.";
  return `Over all directions, up and down too, its level deviates by ${decibels(built)} dB as built, by ${decibels(aimed)} dB with the delays (standard deviation over the sphere, mean of 100 Hz to 4 kHz).`;
}

/** Of the octaves that the standard judges, those that pass. */
function passes(judged: Octave[], isEven: (o: Octave) => boolean): string {
  const names = (all: Octave[]) => all.map((o) => hertz(nominal(o.octave_hz))).join(", ");
  const [good, bad] = [judged.filter(isEven), judged.filter((o) => !isEven(o))];
  const all = `every octave from ${hertz(nominal(judged[0]!.octave_hz))} to ${hertz(nominal(judged[judged.length - 1]!.octave_hz))}`;
  if (bad.length === 0) return `passes in ${all}`;
  if (good.length === 0) return `fails in ${all}`;
  return `passes at ${names(good)} and fails at ${names(bad)}`;
}

// The page: one design, one plan, and what is drawn of them.

import { AllRound } from "./allround";
import * as api from "./api";
import { BodyView } from "./bodyview";
import { Built } from "./built";
import { Compare } from "./compare";
import { Curves } from "./curves";
import { DelayBars } from "./delaybars";
import { Desk } from "./desk";
import { el, framed, make, say } from "./dom";
import { Fields } from "./fields";
import { Disk } from "./disk";
import { Files } from "./files";
import { findings } from "./findings";
import { Follow } from "./follow";
import { FoundPanel } from "./found";
import { Hear } from "./hear";
import { Lede } from "./lede";
import { Losses } from "./losses";
import { RoomMap } from "./map";
import { Round } from "./polar";
import { notice } from "./notice";
import { omni } from "./omni";
import { printing } from "./printing";
import { front, sheet } from "./sheet";
import { State } from "./state";
import { stopped } from "./stopped";
import { Tables } from "./table";
import { textPanel } from "./textpanel";
import { theme } from "./theme";
import type { Started } from "./document";
import { Turns } from "./turns";
import { Trial } from "./trial";
import { undo } from "./undo";
import { Visit } from "./visit";
import { where } from "./where";
import { typeset } from "./words";

/** What is said in lines: what to know first, and what was found. */
function notes(state: State): void {
  const { planned } = state;
  if (planned === null) return;
  findings(state);
  const ofSeats = new Set(planned.plan.seats?.words);
  el("sentences").replaceChildren(...planned.sentences.map((text) => line(text, ofSeats.has(text))));
}

/** A sentence; what the table of seats has is not said again on paper. */
function line(text: string, isOfSeats: boolean): HTMLLIElement {
  return make("li", { class: isOfSeats ? "of-seats" : undefined }, typeset(text));
}

function build(start: Started): Visit {
  const state = new State();
  state.keys = new Map(start.keys.map((k) => [k.key, k]));
  const follow = new Follow(state);
  const lede = new Lede(state);
  const losses = new Losses(state);
  const allRound = new AllRound(state);
  const tables = new Tables(state);
  const desk = new Desk(state);
  const bars = new DelayBars(state, desk);
  const curves = new Curves(state);
  const turns = new Turns(state, follow);
  const trial = new Trial(state);
  const body = new BodyView(state, trial);
  omni(state);
  let isRest = false;

  // Everything that follows the chair is drawn in one frame.
  const draw = framed(() => {
    const began = performance.now();
    map.draw();
    lede.draw();
    losses.draw();
    allRound.draw();
    tables.draw();
    bars.draw();
    curves.draw(isRest);
    turns.draw(isRest);
    round.draw();
    body.follow(isRest);
    if (isRest) tables.drivers();
    isRest = false;
    document.body.dataset.frameMs = (performance.now() - began).toFixed(2);
    if (state.moved !== null) {
      document.body.dataset.seq = String(state.moved.seq);
      if (document.body.dataset.ready === undefined) requestAnimationFrame(() => window.setTimeout(() => body.begin()));
      document.body.dataset.ready = "yes";
    }
  });
  const map = new RoomMap(state, follow, draw);
  const round = new Round(state, draw);

  for (const news of ["spot", "link", "pick", "ears", "turned"] as const) state.on(news, draw);
  state.on("moved", draw);
  state.on("round", () => {
    round.take();
    draw();
  });
  // A strip of the map changes nothing else.
  const drawMap = framed(() => map.draw());
  state.on("map", () => {
    map.take();
    drawMap();
    if (follow.heat?.isFine && follow.heat.isWhole) document.body.dataset.rest = String(follow.drawnSeq);
  });
  state.on("rest", () => {
    isRest = true;
    draw();
  });
  state.on("plan", () => {
    notes(state);
    sheet(state);
    front(state);
    draw();
  });
  stopped(state);
  undo(state);
  where(state);
  const found = start.found ? new FoundPanel(state) : null;
  new Fields(state, trial, start);
  const files = new Files(state, start);
  new Hear(state, start, desk);
  const compare = new Compare(state, curves);
  new Built(state, curves);
  textPanel(state);
  theme(() => {
    curves.renew();
    turns.renew();
    body.recolour();
    found?.recolour();
    draw();
  });
  printing((isPaper) => {
    turns.forPaper(isPaper);
    curves.forPaper(isPaper);
    map.draw();
    if (isPaper) body.forPaper();
    else body.recolour();
    if (!isPaper) draw();
  });
  const visit = new Visit(state, files, compare, start);
  if (start.can_save) new Disk(state, files);
  return visit;
}

async function run(): Promise<void> {
  try {
    const start = await api.start();
    say(el("version"), start.version);
    await build(start).begin();
  } catch (error) {
    const why = error instanceof api.Gone ? "start it again, then load this page anew" : error instanceof Error ? error.message : String(error);
    notice("link", `The program does not answer: ${why}.`);
  }
}

void run();

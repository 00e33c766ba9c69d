// The page: one design, one plan, and what is drawn of them.

import { AllRound } from "./allround";
import * as api from "./api";
import { BodyModel } from "./bodymodel";
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
import { Parts } from "./inview";
import { KitPanel } from "./kit";
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
  const parts = new Parts();
  const due = { isAll: false, isMoving: true, isRest: false };

  // Everything that follows the chair is drawn in one frame: canvases before words, since to write on a canvas lays out what was changed.
  const frame = framed(() => {
    const { isAll, isMoving, isRest } = due;
    Object.assign(due, { isAll: false, isMoving: true, isRest: false });
    if (!isAll) return map.draw();
    parts.draw(isMoving, isRest);
    if (isRest) tables.drivers();
    if (state.moved === null) return;
    document.body.dataset.seq = String(state.moved.seq);
    if (document.body.dataset.ready !== undefined) return;
    document.body.dataset.ready = "yes";
    requestAnimationFrame(() => window.setTimeout(() => body.begin()));
  });
  const trail = () => {
    due.isAll = true;
    frame();
  };
  const draw = () => {
    due.isMoving = false;
    trail();
  };
  const map = new RoomMap(state, follow, draw);
  const round = new Round(state, draw);
  parts.add(el("polar"), () => round.draw());
  parts.add(el("room"), () => map.draw());
  parts.add(null, () => {
    lede.draw();
    losses.draw();
    allRound.draw();
  });
  parts.add(el("channels"), () => {
    tables.draw();
    bars.draw();
  });
  parts.add(el("solid"), (isRest) => body.follow(isRest));
  parts.add(el("curves"), (isRest) => curves.draw(isRest));
  parts.add(el("turns"), (isRest) => turns.draw(isRest));

  for (const news of ["link", "pick", "ears", "turned"] as const) state.on(news, draw);
  for (const news of ["spot", "moved"] as const) state.on(news, trail);
  state.on("round", () => {
    round.take();
    draw();
  });
  // A strip of the map changes nothing else.
  state.on("map", () => {
    map.take();
    frame();
    if (follow.heat?.isFine && follow.heat.isWhole) document.body.dataset.rest = String(follow.drawnSeq);
  });
  state.on("rest", () => {
    due.isRest = true;
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
  new BodyModel(state);
  const found = start.found ? new FoundPanel(state) : null;
  new Fields(state, trial, start);
  const files = new Files(state, start);
  new Hear(state, start, desk);
  const compare = new Compare(state, curves);
  new Built(state, curves);
  const kit = new KitPanel(state);
  textPanel(state);
  theme(() => {
    curves.renew();
    turns.renew();
    body.recolour();
    kit.recolour();
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

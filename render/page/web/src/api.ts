// The server's few verbs.

import type { BenchAnswer, BookAnswer, Change, Edited, Fault, FoundAnswer, LoudnessAnswer, LoudnessAsked, MeasuredAnswer, Merged, Merging, OfferedText, PhoneAnswer, PlanAnswer, Saved, Started, Survey, Ticking, TicksAnswer, WalkAnswer, WalkAsked, WhereFound } from "./document";

/** A design that cannot be planned, with the server's words for each fault. */
export class Faulty extends Error {
  constructor(
    readonly faults: Fault[],
    /** What one press makes of it; null: none is known. */
    readonly cure: Edited | null = null,
  ) {
    super(faults.map((f) => f.reason).join("; "));
  }
}

/** The program that serves the page does not answer. */
export class Gone extends Error {
  constructor() {
    super("the program does not answer");
  }
}

/** Fetches; a browser's own words for nobody there are for nobody. */
async function call(path: string, how: RequestInit = {}): Promise<Response> {
  try {
    return await fetch(path, how);
  } catch (error) {
    throw error instanceof TypeError ? new Gone() : error;
  }
}

/** Why there is no socket, in words; empty: the server is there and may let the next one in. */
export async function whyNotLive(): Promise<string> {
  try {
    const answer = await call("api/live");
    return answer.status === 429 || answer.status === 403 ? (await refused(answer)).message : "";
  } catch (error) {
    return error instanceof Gone ? stopped() : "";
  }
}

/** What to do where the program is gone. */
function stopped(): string {
  const port = location.port === "" ? "" : ` with --port ${location.port}`;
  return `The program has stopped. Start it again${port}, and this page goes on from here; till then it works nothing out`;
}

async function refused(answer: Response): Promise<Error> {
  const said: unknown = await answer.json().catch(() => null);
  if (said !== null && typeof said === "object") {
    if ("faults" in said && Array.isArray(said.faults)) return new Faulty(said.faults as Fault[], "cure" in said ? (said.cure as Edited) : null);
    if ("error" in said && typeof said.error === "string") return new Error(said.error);
  }
  return new Error(`the server answered ${answer.status}`);
}

async function post(verb: string, what: unknown, signal?: AbortSignal): Promise<Response> {
  const answer = await call(`api/${verb}`, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(what),
    ...(signal ? { signal } : {}),
  });
  if (!answer.ok) throw await refused(answer);
  return answer;
}

export async function start(): Promise<Started> {
  const answer = await call("api/start");
  if (!answer.ok) throw await refused(answer);
  return (await answer.json()) as Started;
}

/** Plans a design; roughly: with what is found at once for seats, where there is nothing better yet. */
export async function plan(text: string, roughly = false, signal?: AbortSignal): Promise<PlanAnswer> {
  return (await (await post("plan", { text, rough: roughly }, signal)).json()) as PlanAnswer;
}

/** Looks round the whole room. */
export async function survey(text: string): Promise<Survey> {
  return (await (await post("survey", { text })).json()) as Survey;
}

/** What a search found. */
export async function found(): Promise<FoundAnswer> {
  const answer = await call("api/found");
  if (!answer.ok) throw await refused(answer);
  return (await answer.json()) as FoundAnswer;
}

/** Opens one of the designs that a search offers. */
export async function offered(file: string): Promise<OfferedText> {
  return (await (await post("offered", { file })).json()) as OfferedText;
}

/** Looks for a better place for the chair or the body. */
export async function where(text: string, what: "chair" | "body", signal: AbortSignal): Promise<WhereFound> {
  return (await (await post("where", { text, what }, signal)).json()) as WhereFound;
}

/** Puts values into a design's text; remarks and order stay, and what that breaks elsewhere is mended. */
export async function edit(text: string, set: Change[]): Promise<Edited> {
  return (await (await post("edit", { text, set })).json()) as Edited;
}

/** Writes the design's file; read says what it was. Returns what it is now. */
export async function save(text: string, read: string): Promise<string> {
  return ((await (await post("save", { text, read })).json()) as Saved).read;
}

/** Samples with a head: of what is asked with a body, or of a file that the browser may have. */
export async function binary(verb: string, wish?: unknown, signal?: AbortSignal): Promise<ArrayBuffer> {
  if (wish !== undefined) return (await post(verb, wish, signal)).arrayBuffer();
  const answer = await call(`api/${verb}`);
  if (!answer.ok) throw await refused(answer);
  return answer.arrayBuffer();
}

/** By which factors cases are equally loud. */
export async function loudness(wish: LoudnessAsked, signal: AbortSignal): Promise<LoudnessAnswer> {
  return (await (await post("loudness", wish, signal)).json()) as LoudnessAnswer;
}

/** Where a walk leads. */
export async function walk(wish: WalkAsked, signal: AbortSignal): Promise<WalkAnswer> {
  return (await (await post("walk", wish, signal)).json()) as WalkAnswer;
}

export async function files(text: string, what: string): Promise<Blob> {
  return (await post("files", { text, what })).blob();
}

/** Holds recordings against a design's plan. */
export async function measure(text: string, asBuilt: boolean, recordings: File[], signal: AbortSignal): Promise<MeasuredAnswer> {
  const form = new FormData();
  form.append("text", text);
  form.append("as_built", String(asBuilt));
  for (const file of recordings) form.append("recording", file, file.name);
  const answer = await call("api/measure", { method: "POST", body: form, signal });
  if (!answer.ok) throw await refused(answer);
  return (await answer.json()) as MeasuredAnswer;
}

/** What is soldered, string by string; null: of the design as it is saved, which is all that a phone may ask. */
export async function bench(text: string | null): Promise<BenchAnswer> {
  return (await (await post("bench", text === null ? {} : { text })).json()) as BenchAnswer;
}

/** The wiring book; null: of the design as it is saved, which is all that a phone may ask. */
export async function book(text: string | null): Promise<BookAnswer> {
  return (await (await post("book", text === null ? {} : { text })).json()) as BookAnswer;
}

/** How a phone comes to the bench. */
export async function phone(): Promise<PhoneAnswer> {
  const answer = await call("api/phone");
  if (!answer.ok) throw await refused(answer);
  return (await answer.json()) as PhoneAnswer;
}

/** What is ticked at the bench. */
export async function ticks(): Promise<TicksAnswer> {
  return (await (await post("ticks", {})).json()) as TicksAnswer;
}

/** Notes a step; returns all that is ticked. */
export async function tick(one: Ticking): Promise<TicksAnswer> {
  return (await (await post("tick", one)).json()) as TicksAnswer;
}

/** Puts two people's changes of one text together. */
export async function merge(what: Merging): Promise<Merged> {
  return (await (await post("merge", what)).json()) as Merged;
}

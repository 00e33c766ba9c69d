// The wiring book: the order of work, each channel from the inside, the wires to cut, what a meter reads. It
// says what the book on paper says, from the same figures and drawings.

import * as api from "./api";
import { el, make, say } from "./dom";
import type { BookAnswer, BookDrawing, BookReading, BookString } from "./document";
import { download } from "./download";
import { theme } from "./theme";
import { leftText } from "./visit";
import { fixed, typeset } from "./words";

type Cell = string | { number: string };

function row(head: Cell, ...cells: Cell[]): HTMLTableRowElement {
  const put = (cell: Cell, tag: "th" | "td"): HTMLElement =>
    make(tag, { ...(tag === "th" ? { scope: "row" } : {}), class: typeof cell === "string" ? undefined : "number" }, typeof cell === "string" ? cell : cell.number);
  return make("tr", {}, put(head, "th"), ...cells.map((c) => put(c, "td")));
}

function readings(rows: BookReading[]): HTMLElement[] {
  return rows.map((r) => row(typeset(r.what), { number: r.ohm }, typeset(r.else)));
}

/** A drawing as the server made it, for the eye; the tables beside it say the same. */
function picture({ svg, title }: BookDrawing): SVGElement {
  const drawn = document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true) as unknown as SVGElement;
  for (const name of ["width", "height"]) drawn.removeAttribute(name);
  drawn.setAttribute("role", "img");
  drawn.setAttribute("aria-label", `${title}, from the inside`);
  return drawn;
}

function pieces(s: BookString): HTMLElement {
  return make("table", {},
    make("caption", {}, make("strong", {}, `String ${s.name}`), `, ${s.takes}`),
    make("thead", {}, make("tr", {}, ...["From", "To", "Colour"].map((h) => make("th", { scope: "col" }, h)), make("th", { scope: "col", class: "number" }, "Length mm"))),
    make("tbody", {}, ...s.pieces.map((p) => row(p.from, p.to, p.colour, { number: fixed(p.length_mm, 0) }))));
}

function drawing(d: BookDrawing, strings: ReadonlyMap<string, BookString>): HTMLElement {
  const own = d.strings.map((name) => strings.get(name)!);
  return make("article", { class: "channel" },
    make("h3", {}, d.title),
    make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": `Drawing of ${d.title}` }, picture(d)),
    make("div", { class: "pieces" }, ...own.map(pieces)));
}

function show(book: BookAnswer): void {
  const strings = new Map(book.strings.map((s) => [s.name, s]));
  say(el("name"), `${book.name}: the wiring book`);
  el("steps").replaceChildren(...book.steps.map((s) => make("li", {}, typeset(s))));
  el("terminals").replaceChildren(...book.terminals.map((t) =>
    row(book.terminals.at(-1)!.body > 0 ? `${t.number}, body ${t.body + 1}` : String(t.number), { number: String(t.channel) }, t.sign, t.sleeves, t.leads)));
  say(el("row"), typeset(book.row));
  el("drawings").replaceChildren(...book.drawings.map((d) => drawing(d, strings)));
  say(el("copper"), typeset(book.copper));
  el("lengths").replaceChildren(...book.cut.map((c) => row(fixed(c.length_mm, 0), { number: String(c.pieces) })));
  say(el("readings-say"), book.readings);
  el("alone").replaceChildren(...readings(book.string_readings));
  el("whole").replaceChildren(...readings(book.channel_readings));
  say(el("cell"), typeset(book.cell));
}

function complain(words: string): void {
  say(el("notice"), words);
  el("notice").hidden = words === "";
}

/** The text of the design as it was left on the page; null on a phone, which has that which is saved. */
async function text(): Promise<string | null> {
  if ((await api.phone()).on_phone) return null;
  el("back").hidden = el("pdf").hidden = false;
  const start = await api.start();
  const left = leftText(start);
  if (left !== start.text) complain("This is the design as it is on the page, with changes that are not saved.");
  return left;
}

async function run(): Promise<void> {
  theme(() => undefined);
  el("print").onclick = () => window.print();
  try {
    const design = await text();
    el("pdf").onclick = () => void api.files(design ?? "", "wiring").then((zip) => download("pappus-wiring.zip", zip)).catch((error: unknown) => complain(`Not made: ${String(error)}`));
    show(await api.book(design));
    document.body.dataset.ready = "yes";
  } catch (error) {
    const why = error instanceof api.Gone ? "The program does not answer: start it again, then load this page anew." : `${error instanceof Error ? error.message : String(error)}.`;
    complain(why.slice(0, 1).toUpperCase() + why.slice(1));
  }
}

void run();

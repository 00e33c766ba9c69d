// What to know before the design is built, worst first: the head of the page.

import { el, make } from "./dom";
import type { State } from "./state";
import type { ShownFinding } from "./document";
import { typeset } from "./words";

/** Fills the head; it is away where there is nothing to know. */
export function findings(state: State): void {
  const { planned } = state;
  if (planned === null) return;
  const more = planned.more_findings;
  el("findings").hidden = planned.findings.length === 0;
  el("findings-list").replaceChildren(
    ...planned.findings.map(row),
    ...(more > 0 ? [make("li", { class: "quiet" }, `And ${more} more, none worse, in plan.json.`)] : []),
  );
}

function row({ rank, lead, stops, what, cure }: ShownFinding): HTMLLIElement {
  const words = make("p", {}, make("strong", { class: "lead" }, lead), ` ${typeset(what)}.`);
  const cured = cure === "" ? [] : [make("p", { class: "cure" }, `${typeset(cure)}.`)];
  return make("li", { "data-rank": rank, class: stops ? "stops" : undefined }, make("div", {}, words, ...cured));
}

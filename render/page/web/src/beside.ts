// What a plan's own delays give, which stays to be seen beside what others would do that are tried.

import type { Moved } from "./document";
import type { State } from "./state";
import type { Former } from "./trial";
import type { Settled } from "./types";

/** What this module put beside: what a hand holds, or another design, is left alone. */
let own: Former | null = null;

/** Puts what is planned beside what is tried, or takes it away once nothing is. */
export function beside(state: State, { as_planned }: Moved, { response }: Settled): void {
  const { planned, former } = state;
  if (former !== null && former !== own) return;
  const was = own !== null && former === own;
  own = as_planned === undefined || planned === null ? null : {
    ofDelays: true, planned, channels: as_planned.channels, measures: as_planned.measures, ...(as_planned.seats ? { seating: as_planned.seats } : {}), response: { ...response, aligned_db: as_planned.aligned_db },
  };
  if (was !== (own !== null)) state.ghost(own);
  else state.former = own;
}

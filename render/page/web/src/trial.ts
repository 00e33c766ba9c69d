// A hand that holds a part of the design: what it tries is planned and shown at once, beside a ghost of
// what was before, and becomes the design when the hand lets go.

import * as api from "./api";
import type { Change, Measures, Output, PlanAnswer, Response, Seating } from "./document";
import type { State } from "./state";

/** What the page showed when a hand took hold. */
export interface Former {
  planned: PlanAnswer;
  response: Response;
  channels: Output[];
  measures: Measures;
  /** How the seats were served; away: one place alone. */
  seating?: Seating;
  /** The body is the same: only delays are tried. */
  ofDelays?: boolean;
}

/** What is shown now, for a ghost of it. */
export function shown(state: State): Former | null {
  const { planned, moved, channels, measures, seating } = state;
  if (planned === null || measures === null) return null;
  return { planned, response: moved?.response ?? planned.plan.response, channels, measures: measures.direct, ...(seating === null ? {} : { seating }) };
}

export class Trial {
  private wish: Change[] | null = null;
  private isUnder = false;
  private holds = false;

  constructor(private readonly state: State) {}

  /** Takes hold: from now on a ghost of what is shown stays. */
  hold(): void {
    this.holds = true;
    if (this.state.former !== null) this.state.ghost(null); // whatever was shown beside it
    this.state.ghost(shown(this.state));
  }

  /** Shows what some changes of the design would do. The newest counts; those between are left out. */
  try(set: Change[]): void {
    this.wish = set;
    if (!this.isUnder) void this.work();
  }

  private async work(): Promise<void> {
    this.isUnder = true;
    for (let set = this.wish; set !== null && this.holds; set = this.wish) {
      this.wish = null;
      try {
        const { text } = await api.edit(this.state.text, set);
        const planned = await api.plan(text, true);
        if (this.holds) this.state.preview(planned);
      } catch {
        // what cannot be planned is told when the hand lets go
      }
    }
    this.isUnder = false;
  }

  /** Lets go: the changes are made, or with none all is as it was. */
  letGo(set: Change[]): void {
    const { former } = this.state;
    this.holds = false;
    this.wish = null;
    this.state.ghost(null);
    if (set.length > 0) void this.state.change(set);
    else if (former !== null) this.state.preview(former.planned);
  }
}

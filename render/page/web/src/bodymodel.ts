// How the body is heard: as a ball, or as it is, by one press. Its own field takes the server up to
// minutes: till then all is by the ball, it is said how far the work is, and the page goes over by itself.

import { el, make, say } from "./dom";
import type { State } from "./state";
import type { Solving } from "./document";
import { going, Waiting } from "./waiting";

export class BodyModel {
  private readonly waiting = new Waiting(false, (news) => this.hear(news));

  constructor(private readonly state: State) {
    el("model-other").onclick = () => {
      const other = state.planned?.model.other ?? "";
      if (other !== "") void state.change([{ key: "timing.model", value: other }]);
    };
    state.on("plan", () => this.take());
  }

  /** Shows what a plan says. What is only tried has no field worked out for it. */
  private take(): void {
    const { planned, isOther } = this.state;
    if (planned === null) return;
    const { words, press, waits } = planned.model;
    el("model").hidden = words === "";
    el("model").classList.toggle("is-working", waits);
    el("model-other").hidden = isOther;
    say(el("model-say"), words);
    say(el("model-other"), press);
    if (isOther) return;
    if (waits) return this.waiting.want(planned.id);
    this.show(null);
    this.waiting.leave();
  }

  private hear(news: Solving): void {
    if (news.solved === true || news.unknown === true) void this.state.renew();
    else this.show(news);
  }

  private show(news: Solving | null): void {
    going(el<HTMLProgressElement>("model-bar"), el("model-going"), news);
    el("model-fault").replaceChildren(...(news?.error === undefined ? [] : [make("p", { class: "fault" }, news.error)]));
  }
}

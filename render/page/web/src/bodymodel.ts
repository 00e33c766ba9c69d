// How the body is heard: as a ball, or as it is, by one press. Its own field takes the server up to
// minutes: till then all is by the ball, it is said how far the work is, and the page goes over by itself.

import { again } from "./again";
import { el, make, say } from "./dom";
import type { State } from "./state";
import type { SolveAsked, Solving } from "./document";

/** After a lost socket the next one is tried so much later. */
const AGAIN_MS = 2000;

export class BodyModel {
  private socket: WebSocket | null = null;
  /** The plan whose body's field is waited for; empty: none is. */
  private wanted = "";
  private readonly bar = el<HTMLProgressElement>("model-bar");

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
    this.wanted = waits ? planned.id : "";
    if (waits || this.socket !== null) this.ask();
    if (waits) return;
    this.going(null);
    this.socket?.close();
  }

  /** Says what is waited for. */
  private ask(): void {
    if (this.socket === null) return this.open();
    if (this.socket.readyState === WebSocket.OPEN) this.socket.send(JSON.stringify({ id: this.wanted } satisfies SolveAsked));
  }

  private open(): void {
    const socket = new WebSocket(`${location.origin.replace(/^http/, "ws")}/api/solve`);
    this.socket = socket;
    socket.onopen = () => (this.wanted === "" ? socket.close() : this.ask());
    socket.onmessage = (event) => this.hear(JSON.parse(String(event.data)) as Solving);
    socket.onclose = (closed) => {
      this.socket = null;
      if (this.wanted !== "") again(closed, AGAIN_MS, () => this.wanted !== "" && this.ask());
    };
  }

  private hear(news: Solving): void {
    if (this.wanted === "" || news.id !== this.wanted) return; // of a design that is no more
    if (news.solved === true || news.unknown === true) void this.state.renew();
    else this.going(news);
  }

  /** Says how far the work is, or why there is none. */
  private going(news: Solving | null): void {
    const isUnder = news !== null && news.error === undefined;
    this.bar.hidden = !isUnder;
    this.bar.value = news?.done ?? 0;
    say(el("model-going"), isUnder ? news.words : "");
    el("model-fault").replaceChildren(...(news?.error === undefined ? [] : [make("p", { class: "fault" }, news.error)]));
  }
}

// What takes the server long is waited for on a socket: the field of a body, or the printed parts. It is told
// how far the work is, and goes on over lost sockets.

import { again } from "./again";
import { hide, say } from "./dom";
import type { SolveAsked, Solving } from "./document";

/** After a lost socket the next one is tried so much later. */
const AGAIN_MS = 2000;

export class Waiting {
  private socket: WebSocket | null = null;
  /** The plan that is waited for; empty: none is. */
  private wanted = "";

  constructor(private readonly ofKit: boolean, private readonly hear: (news: Solving) => void) {}

  /** Waits for a plan's; for none where it is empty. */
  want(id: string): void {
    this.wanted = id;
    if (id !== "" || this.socket !== null) this.ask();
  }

  /** Waits for none any more, and lets the socket go. */
  leave(): void {
    this.want("");
    this.socket?.close();
  }

  private ask(): void {
    if (this.socket === null) return this.open();
    if (this.socket.readyState === WebSocket.OPEN) this.socket.send(JSON.stringify({ id: this.wanted, kit: this.ofKit } satisfies SolveAsked));
  }

  private open(): void {
    const socket = new WebSocket(`${location.origin.replace(/^http/, "ws")}/api/solve`);
    this.socket = socket;
    socket.onopen = () => (this.wanted === "" ? socket.close() : this.ask());
    socket.onmessage = (event) => {
      const news = JSON.parse(String(event.data)) as Solving;
      if (this.wanted !== "" && news.id === this.wanted) this.hear(news); // else it is of a design that is no more
    };
    socket.onclose = (closed) => {
      this.socket = null;
      if (this.wanted !== "") again(closed, AGAIN_MS, () => this.wanted !== "" && this.ask());
    };
  }
}

/** Shows how far such work is, or why there is none. */
export function going(bar: HTMLProgressElement, words: Element, news: Solving | null): void {
  const isUnder = news !== null && news.error === undefined;
  hide(bar, !isUnder);
  bar.value = news?.done ?? 0;
  say(words, isUnder ? news.words : "");
}

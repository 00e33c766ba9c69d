// The socket that follows the chair: one question in flight, the newest wins. A
// fine question is given up by the server when the next one comes, so the next
// one need not wait for it.

import { whyNotLive } from "./api";
import type { Move } from "./document";
import type { Answer } from "./types";

/** Up to so many cells a question is always answered. */
export const MOST_ROUGH_CELLS = 32;
const FIRST_WAIT_MS = 250;
const LONGEST_WAIT_MS = 4000;

export class Live {
  private socket: WebSocket | null = null;
  private next: Omit<Move, "seq"> | null = null;
  private last: Omit<Move, "seq"> | null = null;
  private seq = 0;
  private flying = false;
  private sent = 0;
  private wait = FIRST_WAIT_MS;

  constructor(
    private readonly heard: (answer: Answer, asked: Omit<Move, "seq">, ms: number) => void,
    /** The socket opens, or it closes for a reason in words; empty: it may open soon; null: not known yet. */
    private readonly open: (isOpen: boolean, why: string | null) => void,
  ) {
    this.connect();
  }

  /** Asks; a question that still waits is forgotten. */
  ask(what: Omit<Move, "seq">): void {
    this.next = what;
    this.send();
  }

  private send(): void {
    if (this.next === null || this.socket?.readyState !== WebSocket.OPEN) return;
    if (this.flying && (this.last?.cells ?? 0) <= MOST_ROUGH_CELLS) return;
    this.last = this.next;
    this.next = null;
    this.flying = true;
    this.seq++;
    this.sent = performance.now();
    this.socket.send(JSON.stringify({ ...this.last, seq: this.seq } satisfies Move));
  }

  private connect(): void {
    const here = new URL("api/live", location.href);
    here.protocol = here.protocol === "https:" ? "wss:" : "ws:";
    const socket = new WebSocket(here);
    this.socket = socket;
    socket.onopen = () => {
      this.wait = FIRST_WAIT_MS;
      this.open(true, "");
      this.send();
    };
    socket.onmessage = (event) => this.hear(String(event.data));
    socket.onclose = () => {
      void this.lost();
      // What was under way is asked once more, unless something newer waits.
      if (this.flying) this.next ??= this.last;
      this.flying = false;
      setTimeout(() => this.connect(), this.wait);
      this.wait = Math.min(2 * this.wait, LONGEST_WAIT_MS);
    };
  }

  private async lost(): Promise<void> {
    this.open(false, null);
    const why = await whyNotLive();
    if (this.socket?.readyState !== WebSocket.OPEN) this.open(false, why);
  }

  private hear(data: string): void {
    const answer = JSON.parse(data) as Answer;
    if (answer.seq !== this.seq || this.last === null) return;
    const asked = this.last;
    const ms = performance.now() - this.sent;
    this.flying = false;
    if (this.next !== null) this.send();
    this.heard(answer, asked, ms);
  }
}

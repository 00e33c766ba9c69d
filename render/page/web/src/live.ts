// The socket that follows the chair: one question in flight, the newest wins. Its figures
// end the flight; what is drawn follows them, and is given up by the server when the next
// question comes.

import { again, isResting, RESTING } from "./again";
import { whyNotLive } from "./api";
import type { Drawn, Move, Moved } from "./document";

export type Asked = Omit<Move, "seq">;
/** So many questions are remembered. */
const KEPT = 64;
const FIRST_WAIT_MS = 250;
const LONGEST_WAIT_MS = 4000;

export class Live {
  private socket: WebSocket | null = null;
  private next: Asked | null = null;
  private last: Asked | null = null;
  /** The newest questions by their numbers: a rough map may come after the next figures. */
  private readonly asked = new Map<number, Asked>();
  private seq = 0;
  private flying = false;
  private wait = FIRST_WAIT_MS;

  constructor(
    private readonly heard: (answer: Moved, asked: Asked) => void,
    /** Something was drawn; newest: of the newest question. */
    private readonly drawn: (drawn: Drawn, asked: Asked, isNewest: boolean) => void,
    /** The socket opens, or it closes for a reason in words; empty: it may open soon; null: not known yet. */
    private readonly open: (isOpen: boolean, why: string | null) => void,
  ) {
    this.connect();
  }

  /** Asks; a question that still waits is forgotten. */
  ask(what: Asked): void {
    this.next = what;
    this.send();
  }

  private send(): void {
    if (this.next === null || this.socket?.readyState !== WebSocket.OPEN) return;
    if (this.flying) return;
    this.last = this.next;
    this.next = null;
    this.flying = true;
    this.seq++;
    this.asked.set(this.seq, this.last);
    this.asked.delete(this.seq - KEPT);
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
    socket.onclose = (closed) => {
      if (isResting(closed)) this.open(false, RESTING);
      else void this.lost();
      // What was under way is asked once more, unless something newer waits.
      if (this.flying) this.next ??= this.last;
      this.flying = false;
      again(closed, this.wait, () => this.connect());
      this.wait = Math.min(2 * this.wait, LONGEST_WAIT_MS);
    };
  }

  private async lost(): Promise<void> {
    this.open(false, null);
    const why = await whyNotLive();
    if (this.socket?.readyState !== WebSocket.OPEN) this.open(false, why);
  }

  private hear(data: string): void {
    const answer = JSON.parse(data) as Moved | Drawn;
    const asked = this.asked.get(answer.seq);
    if (asked === undefined) return;
    if ("strip" in answer || "polar" in answer || "lean" in answer) return this.drawn(answer, asked, answer.seq === this.seq);
    if (answer.seq !== this.seq) return;
    this.flying = false;
    this.send();
    this.heard(answer as Moved, asked);
  }
}

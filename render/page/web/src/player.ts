// The sound graph: a programme that goes round, heard through one mix at a time, a limiter and
// the volume. Another mix is taken by fading from the one's input to the other's, so that what
// is in the air already rings out, as it does in a room, and nothing clicks.

import type { Mix } from "./mixdown";
import type { Programme } from "./stems";

const RATE = 48000;
const CHANGE_S = 0.02;
const BEGIN_S = 1.5;
const END_S = 0.06;
/** How far ahead of the sound changes are set: some of the browser's blocks. */
const AHEAD_S = 0.008;

/** One mix that is heard, or fades. */
interface Take {
  input: GainNode;
  nodes: AudioNode[];
  /** How long it rings on, s. */
  tail: number;
}

/** A mix to be heard: how much louder, and what it is. */
export interface Wanted {
  mix: Mix;
  gain: number;
  name: string;
}

export class Player {
  private context: AudioContext | null = null;
  private limiter: Promise<AudioNode> | null = null;
  private out: AudioNode | null = null;
  private master: GainNode | null = null;
  private source: { of: Programme; node: AudioBufferSourceNode } | null = null;
  private take: Take | null = null;
  private wanted: Wanted | null = null;
  private freeAt = 0;
  private timer = 0;
  private turn = 0;

  /** heard is told of a mix, and when it has come out of the graph. */
  constructor(private readonly heard: (name: string, at: number) => void) {}

  /** The graph's clock; null before there was any sound. */
  get clock(): AudioContext | null {
    return this.context;
  }

  get isOn(): boolean {
    return this.source !== null;
  }

  /** Begins with a mix, from nothing to a level, slowly; false: it was stopped before it began. */
  async begin(programme: Programme, wanted: Wanted, level: number): Promise<boolean> {
    const turn = ++this.turn;
    this.context ??= new AudioContext({ sampleRate: RATE, latencyHint: "interactive" });
    const { context } = this;
    void context.resume();
    const out = await (this.limiter ??= this.limited(context, programme));
    if (this.turn !== turn) return false;
    this.out = out;
    const master = context.createGain();
    master.gain.setValueAtTime(0, context.currentTime);
    out.disconnect();
    out.connect(master).connect(context.destination);
    this.master = master;
    this.start(programme);
    this.freeAt = 0;
    this.put(wanted);
    master.gain.linearRampToValueAtTime(level, context.currentTime + BEGIN_S);
    return true;
  }

  private async limited(context: AudioContext, { ceiling, look_ahead_s, release_s }: Programme): Promise<AudioNode> {
    await context.audioWorklet.addModule("limiter.js");
    return new AudioWorkletNode(context, "limiter", {
      channelCount: 2, channelCountMode: "explicit", outputChannelCount: [2],
      processorOptions: { ceiling, look_ahead_s, release_s },
    });
  }

  /** Plays another programme, through what is put next. */
  change(programme: Programme): void {
    if (this.source === null || this.source.of === programme || this.context === null) return;
    const { node } = this.source;
    const old = this.take;
    this.take = null;
    this.start(programme);
    if (old !== null) this.end(old, this.context.currentTime + AHEAD_S);
    node.stop(this.context.currentTime + AHEAD_S + CHANGE_S + 0.05);
  }

  private start(programme: Programme): void {
    const context = this.context!;
    const node = context.createBufferSource();
    node.buffer = bufferOf([programme.loop]);
    node.loop = true;
    node.start(Math.ceil((context.currentTime + AHEAD_S) * RATE) / RATE);
    this.source = { of: programme, node };
  }

  /** Has a mix heard as soon as the change before it is done; what waited is forgotten. */
  put(wanted: Wanted): void {
    if (this.source === null || this.context === null) return;
    this.wanted = wanted;
    this.soon();
  }

  /** Begins the next change once the one before it is done by the graph's clock, which may stand still. */
  private soon(): void {
    window.clearTimeout(this.timer);
    if (this.context === null) return;
    const wait = this.freeAt - AHEAD_S - this.context.currentTime;
    if (wait <= 0) this.next();
    else this.timer = window.setTimeout(() => this.soon(), 1000 * wait + 1);
  }

  private next(): void {
    const { wanted, context, source } = this;
    if (wanted === null || context === null || source === null) return;
    this.wanted = null;
    const old = this.take;
    const take = this.made(wanted);
    source.node.connect(take.input);
    const at = context.currentTime + AHEAD_S;
    take.input.gain.setValueAtTime(0, at);
    take.input.gain.linearRampToValueAtTime(1, at + CHANGE_S);
    if (old !== null) this.end(old, at);
    this.take = take;
    this.freeAt = at + CHANGE_S;
    this.heard(wanted.name, at + CHANGE_S);
  }

  private made({ mix, gain }: Wanted): Take {
    const context = this.context!;
    const input = context.createGain();
    input.gain.value = 0;
    const nodes: AudioNode[] = [];
    let tail = 0;
    for (const [i, filter] of mix.filters.entries()) {
      const responses = mix.responses[i]!;
      const driver = convolver(context, [filter]);
      const place = convolver(context, responses.map((r) => r.map((v) => gain * v)));
      input.connect(driver).connect(place).connect(this.out!);
      nodes.push(driver, place);
      tail = Math.max(tail, (filter.length + responses[0]!.length) / RATE);
    }
    return { input, nodes, tail };
  }

  /** Fades a take out and, once it has rung out, takes it from the graph. */
  private end(take: Take, at: number): void {
    const { gain } = take.input;
    gain.setValueAtTime(1, at);
    gain.linearRampToValueAtTime(0, at + CHANGE_S);
    const context = this.context!;
    const drop = () => {
      const left = at + CHANGE_S + take.tail - context.currentTime; // of the graph's time, which may stand still
      if (left > 0) return void window.setTimeout(drop, 1000 * left + 50);
      for (const node of [take.input, ...take.nodes]) node.disconnect();
    };
    drop();
  }

  /** Turns the volume to a factor. */
  level(to: number): void {
    if (this.master !== null && this.source !== null) fade(this.master, to, this.context!.currentTime, 0.05);
  }

  stop(): void {
    this.turn++;
    window.clearTimeout(this.timer);
    this.wanted = null;
    const { source, take, master, context } = this;
    this.source = this.take = this.master = null;
    if (source === null || master === null || context === null) return;
    const now = context.currentTime;
    fade(master, 0, now, END_S);
    source.node.stop(now + END_S + 0.02);
    source.node.addEventListener("ended", () => [master, ...(take === null ? [] : [take.input, ...take.nodes])].forEach((node) => node.disconnect()));
  }
}

function bufferOf(channels: Float32Array[]): AudioBuffer {
  const buffer = new AudioBuffer({ length: channels[0]!.length, numberOfChannels: channels.length, sampleRate: RATE });
  for (const [i, samples] of channels.entries()) buffer.getChannelData(i).set(samples);
  return buffer;
}

function convolver(context: BaseAudioContext, channels: Float32Array[]): ConvolverNode {
  return new ConvolverNode(context, { buffer: bufferOf(channels), disableNormalization: true });
}

/** Brings a gain to another in so many seconds. */
function fade(node: GainNode, to: number, at: number, seconds: number): void {
  node.gain.cancelScheduledValues(at);
  node.gain.setValueAtTime(node.gain.value, at);
  node.gain.linearRampToValueAtTime(to, at + seconds);
}

/** The instant of the graph's time that comes out of the loudspeaker or the headphones now, s. */
export function outAt(context: AudioContext): number {
  const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp();
  if (contextTime > 0) return contextTime + Math.max(0, performance.now() - performanceTime) / 1000;
  return context.currentTime - (context.outputLatency || context.baseLatency || 0);
}

// The shapes that the server speaks, as the page uses them. Numbers carry their
// unit in the name; null stands where there is no number.

export type Triple = [number, number, number];
export type Maybe = number | null;

export interface Fault {
  line: number;
  key: string;
  reason: string;
}

export type Kind = "number" | "whole" | "choice" | "flag" | "text" | "list";

export type Value = number | string | boolean | null | Value[];

/** One key of the design file, as a field of the form. */
export interface Key {
  key: string;
  table: string;
  name: string;
  unit: string;
  kind: Kind;
  low: number;
  high: number;
  choices: string[] | null;
  default: Value;
  needed: boolean;
  /** What it is, in a few words. */
  label: string;
  remark: string;
}

export interface Named {
  name: string;
  words: string;
}

export interface Table {
  table: string;
  /** It stands for a thing that is there only if the table is. */
  optional: boolean;
  remark: string;
}

/** A text after changes, and what was mended for them, in sentences without a full stop. */
export interface Edited {
  text: string;
  mended: string[];
}

/** Where somebody sits, in the program's words. */
export interface Place {
  /** Along the floor. */
  along_m: number;
  short: string;
  /** Where to hold the tape. */
  tape: string;
  high: string;
}

/** One thing to know before the design is built. */
export interface Finding {
  rank: string;
  /** The word that stands before it. */
  lead: string;
  /** It should not be built so. */
  stops: boolean;
  what: string;
  cure: string;
}

/** How a channel's drivers are strung, and what its amplifier and a driver get. */
export interface Wiring {
  channel: number;
  dc_ohm: number;
  lowest_ohm: Maybe;
  lowest_hz: Maybe;
  driver_w: Maybe;
  /** Drivers in the order of their joints. */
  strings: { drivers: number[] }[];
}

export interface Start {
  path: string;
  name: string;
  text: string;
  can_save: boolean;
  version: string;
  /** What the file was when it was read, for save. */
  read: string;
  programmes: Named[];
  cases: Named[];
  files: Named[] | null;
  walks: Named[];
  keys: Key[];
  tables: Table[];
}

export interface DriverRow {
  id: number;
  channel: number;
  delay_us: number;
  level_db: Maybe;
  field_arrival_us: Maybe;
  arrival_us: number;
  path_m: number;
  straight_path_m: number;
  seen: boolean;
}

/** One split into channels: what its longest strings cost and bring. */
export interface Strung {
  longest_string: number;
  smear_us: Maybe;
  comb_onset_hz: Maybe;
  louder_db: Maybe;
  least_ohm: Maybe;
  rule: boolean;
  chosen: boolean;
}

/** What a survey of the room says of an octave; null: the standard does not judge it. */
export interface Octave {
  octave_hz: number;
  omni_as_built_pass: boolean | null;
  omni_pass: boolean | null;
}

/** What a channel is set to. */
export interface Channel {
  id: number;
  drivers: number[];
  delay_us: number;
  gain_db: number;
}

export interface PlanChannel extends Channel {
  inverted: boolean;
  series: number;
  parallel: number;
  nominal_ohm: number;
  dc_ohm: number;
}

export interface Response {
  frequency_hz: number[];
  unaligned_db: Maybe[];
  aligned_db: Maybe[];
  in_step_db: Maybe[];
}

export interface AtSpot {
  smear_us: Maybe;
  spread_us: Maybe;
  comb_onset_hz: Maybe;
}

/** What a surface sends back to the chair, the deepest dip first. */
export interface Echo {
  by: string;
  late_us: number;
  dip_hz: number;
  depth_db: number;
}

/** Of the direct sound, without the surface below or the room. */
export interface Measures {
  aligned: AtSpot;
  unaligned: AtSpot;
}

export interface Plan {
  name: string;
  model: string;
  level_unit: string;
  drivers: DriverRow[];
  channels: PlanChannel[];
  response: Response;
  measures: Measures;
  echoes: Echo[];
  front: Strung[];
}

export interface Filter {
  name: string;
  frequency_hz: number;
  q: number;
  gain_db: number;
}

/** What the processor is set to for one channel; the woofer's has a name. */
export interface Setting {
  channel: number;
  name?: string;
  delay_ms: number;
  delay_samples: number;
  exact_us: number;
  gain_db: number;
  inverted: boolean;
  filters: Filter[];
}

/** What the processor's step does to the delays. */
export interface Rounding {
  step_us: number;
  octave_hz: number[];
  /** By how much each octave of the sum gets weaker; null: the processor does not carry it. */
  loss_db: Maybe[];
}

export interface Mount {
  id: number;
  at_mm: Triple;
  normal: Triple;
  cone_mm: number;
  flange_mm: number;
}

export interface Solid {
  vertices_mm: Triple[];
  faces: number[][];
}

/** A design and everything that was worked out for it. */
export interface Planned {
  id: string;
  text: string;
  values: Record<string, Value>;
  given: string[];
  plan: Plan;
  solid: Solid;
  drivers: Mount[];
  processor: Setting[];
  wiring: Wiring[];
  findings: Finding[];
  /** How many more there are. */
  more_findings: number;
  place: Place;
  rounding: Rounding;
  /** corner_hz 0: no high-pass. */
  protection: { family: string; order: number; corner_hz: number; least_hz: Maybe };
  sentences: string[];
  /** By which rule strings are chosen; empty where there is no choice. */
  front_rule: string;
  floor_m: number | null;
  room: { low_m: Triple; high_m: Triple } | null;
  spot_m: Triple;
  /** Half as wide as the map is. */
  slice: { half_width_m: number };
}

export type View = "above" | "side";
export type Quantity = "level" | "smear" | "comb_onset" | "summing_loss";

/** What the page asks while the chair moves. */
export interface Ask {
  seq: number;
  id: string;
  spot_m: Triple;
  view: View;
  quantity: Quantity;
  band_hz: number;
  cells: number;
}

export interface Heat {
  columns: number;
  rows: number;
  low_m: [number, number];
  high_m: [number, number];
  values: Maybe[];
  unit: string;
}

export interface Polar {
  angle_deg: number[];
  band_hz: number[];
  level_db: Maybe[][];
  /** The same without delays. */
  unaligned_db: Maybe[][];
}

/** The whole answer to a move; the rest of it is there unless a fault is. */
export interface Moved {
  seq: number;
  spot_m: Triple;
  place: Place;
  drivers: DriverRow[];
  channels: Channel[];
  response: Response;
  measures: Measures;
  echoes?: Echo[];
  polar?: Polar | null;
  map?: Heat | null;
}

/** A spot that cannot be planned for, or a question that was not understood. */
export interface Refusal {
  seq: number;
  place?: Place;
  fault?: string;
  error?: string;
}

export type Answer = Moved | { seq: number; unknown: true } | Refusal;

/** What one channel's recording told. */
export interface MeasuredChannel {
  id: number;
  late_us: Maybe;
  error_us: Maybe;
  set_delay_us: Maybe;
  proposed_delay_us: Maybe;
  level_db: Maybe;
  level_error_db: Maybe;
}

/** What recordings told; null where the channels, or all of them at once, were not recorded. */
export interface Measured {
  faults: string[];
  sentences: string[];
  channels: MeasuredChannel[] | null;
  level: { frequency_hz: number[]; smoothed_db: Maybe[] } | null;
}

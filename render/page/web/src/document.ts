// Made by go generate ./render/page from the structs of render/document and render/page.

import type { Delays, Kind, Quantity, Value, View } from "./types";

export type Triple = [number, number, number];

/** What the sound travels through. */
export interface Air {
  temperature_c: number;
  humidity_percent: number;
  pressure_kpa: number;
  speed_of_sound_m_s: number;
}

/** What the loads are computed for. */
export interface Amplifier {
  /** RMS, what levels are for */
  volt: number;
  /** it is the amplifier's own */
  given: boolean;
  /** as it is sold; null: not given */
  watt: number | null;
  /** null: not given */
  into_ohm: number | null;
  minimum_ohm: number;
}

/** What stays beside what is tried. */
export interface AsPlanned {
  /** at the frequencies that the plan's response has; null: silent */
  aligned_db: (number | null)[];
  channels: Output[];
  measures: Measures;
  /** only where there are several */
  seats?: Seating;
}

/** A request that has a design alone. */
export interface Asked {
  text: string;
}

/** The figures of merit at a point. */
export interface AtSpot {
  /** null: silent */
  smear_us: number | null;
  /** null: silent */
  spread_us: number | null;
  /** null: none up to the highest frequency */
  comb_onset_hz: number | null;
  /** from 500 Hz to 8 kHz against all drivers in step; null: silent */
  loss_db: number | null;
}

/** What stands for the body in the sphere model. */
export interface Ball {
  radius_mm: number;
  x_mm: number;
  y_mm: number;
  z_mm: number;
}

/** How a channel's drivers are strung, and its load. */
export interface Bank extends Load {
  channel: number;
  dc_ohm: number;
  /** strung so, for they lose less than spread ones */
  of_neighbours: boolean;
  strings: DriverString[];
}

/** What is soldered, string by string, with what a meter then shows: DC resistance at 20 C of coils and wire; coils may be off by loom.Tolerance. */
export interface Bench {
  tolerance_percent: number;
  /** drivers are on two discs, those of the upper half and of the lower */
  halves: boolean;
  channels: BenchChannel[];
  joints: BenchJoint[];
  /** how to measure, and what to mind, in sentences */
  say: string[];
}

/** What is soldered of a design. */
export interface BenchAnswer extends Bench {
  name: string;
}

/** The strings of one channel, in the order in which they are joined. */
export interface BenchChannel {
  channel: number;
  strings: BenchString[];
  /** at the amplifier's end of its wire */
  whole: Reading;
}

/** Where a driver is seen from inside the body: loom.Place. */
export interface BenchJoint {
  id: number;
  /** from 0 */
  body: number;
  right: number;
  up: number;
  lower: boolean;
}

/** One string: its plus is the first driver's, its minus the last one's. */
export interface BenchString {
  /** in the order of their joints */
  drivers: number[];
  /** with its slack */
  wire_m: number;
  /** before it is joined to the others */
  alone: Reading;
  /** in parallel with the channel's strings before it */
  joined: Reading;
}

/** The wiring book but for its drawings: what stands on its sheets, and on the page. */
export interface Book {
  /** the order of work */
  steps: string[];
  terminals: BookTerminal[];
  /** how terminals are, in sentences */
  row: string;
  /** which wire is cut, in sentences */
  copper: string;
  cut: BookCut[];
  strings: BookString[];
  /** what readings are of, in sentences */
  readings: string;
  /** what a cell at a channel's terminals shows, in a sentence */
  cell: string;
  /** of each string at its two ends, before it is joined to others */
  string_readings: BookReading[];
  /** of each channel at its terminals, on each body, all strings joined */
  channel_readings: BookReading[];
}

/** The wiring book. */
export interface BookAnswer extends Book {
  name: string;
  drawings: BookDrawing[];
}

/** How many pieces of a length there are to cut. */
export interface BookCut {
  length_mm: number;
  pieces: number;
}

/** The inside of a body with some strings. */
export interface BookDrawing {
  title: string;
  /** the names of those that are drawn */
  strings: string[];
  svg: string;
}

/** A piece of wire. */
export interface BookPiece {
  from: string;
  to: string;
  colour: string;
  length_mm: number;
}

/** What a meter reads. */
export interface BookReading {
  what: string;
  /** between which values it is good */
  ohm: string;
  /** what other readings mean */
  else: string;
}

/** A string on a body, piece by piece. */
export interface BookString {
  /** channel and string, as on labels */
  name: string;
  channel: number;
  /** from 0 */
  body: number;
  /** the length, resistance and loss of its wire, in words */
  takes: string;
  pieces: BookPiece[];
}

/** One terminal of a body's row, from the left as it is seen from outside. */
export interface BookTerminal {
  /** in its row, from 1: the cable's core, too */
  number: number;
  /** from 0 */
  body: number;
  channel: number;
  sign: string;
  /** the strings whose leads are joined there, and their colour */
  leads: string;
  /** the colours of the channel's number (IEC 60062) */
  sleeves: string;
}

/** A key's new value; null remarks it out. */
export interface Change {
  key: string;
  value: Value;
}

/** One amplifier output. */
export interface Channel extends Output, Load {
  inverted: boolean;
  /** drivers in a string */
  series: number;
  /** strings */
  parallel: number;
  nominal_ohm: number;
  dc_ohm: number;
}

/** What delays taken so, one for each driver, leave at the spot. */
export interface Choice {
  /** straight, path, field or peak */
  by: string;
  octave_hz: number[];
  short_of_in_step_db: number[];
}

/** What is heard on the circles. */
export interface Circles {
  /** [circle][octave] mean energy, over that without delays */
  gain_db: number[][];
  /** [circle][octave] the furthest of the 30-degree gliding means from the circle's (ISO 3382-1) */
  deviation_db: number[][];
}

/** How each driver is heard, in the plan's order: their levels, and of a spot at rest what a table has. */
export interface Columns {
  /** null: silent */
  level_db: (number | null)[];
  path_m?: number[];
  straight_path_m?: number[];
  arrival_us?: number[];
  /** null: not computed */
  field_arrival_us?: (number | null)[];
  seen?: boolean[];
}

/** A key that both set, and not alike; a value that is not there is empty. */
export interface Conflict {
  key: string;
  base: string;
  mine: string;
  theirs: string;
}

/** What so many channels leave. */
export interface Count {
  channels: number;
  split: string;
  smear_us: number;
  /** all drivers counting alike */
  plain_smear_us: number;
  /** null: none up to the highest frequency */
  comb_onset_hz: number | null;
  /** drivers */
  longest_string: number;
}

/** What follows the figures of a move: a strip of its map, or, at rest, the circle round it, or how far one may lean. */
export interface Drawn {
  seq: number;
  polar?: Polar;
  strip?: Strip;
  /** edges of where no more than 1 dB more is lost than at the spot, or a seat */
  lean?: [number, number][][];
}

/** Where a driver sits, from the body's centre along its own axes, and how it is heard. */
export interface Driver extends Heard {
  x_mm: number;
  y_mm: number;
  z_mm: number;
  /** outward */
  normal: Triple;
  /** peak of the model's impulse response; null: not computed */
  peak_arrival_us: number | null;
  /** in the room; left out where the body stands as designed */
  at_m?: Triple;
}

/** Drivers in series, in the order of their joints. */
export interface DriverString {
  drivers: number[];
  wire_m: number;
}

/** What is to be heard at a place, by whoever convolves it. Where the design has several seats, it is what is heard there of the plan for all of them. */
export interface EarsAsked {
  text: string;
  /** what is planned for; null: as the design has it */
  spot_m: Triple | null;
  /** where the ears are; null: at the spot */
  at_m: Triple | null;
  /** some of those that are offered */
  cases: string[];
  two_ears: boolean;
  dry: boolean;
}

/** Says what the samples are that follow: filters, then of each stem those of the left ear and, with two ears, those of the right one. A case is the sum of what it feeds, each stem behind its filter, times a gain and later by a delay. */
export interface EarsHead {
  rate: number;
  two_ears: boolean;
  /** samples of each */
  filters: number[];
  stems: StemHead[];
  cases: Record<string, Fed[]>;
}

/** What the surface below or a wall of the room sends back to the spot. */
export interface Echo {
  /** its name */
  by: string;
  /** of way behind the direct sound */
  extra_mm: number;
  late_us: number;
  /** the first of its comb */
  dip_hz: number;
  /** there */
  depth_db: number;
  /** where it is thrown back */
  at_m: Triple;
  /** about where the dip goes with the body nearer to it; null: there is no room */
  dip_100_mm_nearer_hz: number | null;
  /** and further away; null: there is no room */
  dip_100_mm_further_hz: number | null;
}

/** A text after its changes. */
export interface Edited {
  text: string;
  /** what was mended for them, in sentences without a full stop */
  mended: string[];
}

/** Puts values into a design's text. */
export interface Edits {
  text: string;
  set: Change[];
}

/** One thing that is wrong with a design. */
export interface Fault {
  /** 0: none */
  line: number;
  /** may be empty */
  key: string;
  value: string;
  reason: string;
}

/** A design that cannot be planned. */
export interface Faulty {
  error: string;
  faults: Fault[];
  /** how one press mends it */
  cure?: Edited;
}

/** How a stem is heard in a case. */
export interface Fed {
  /** index */
  stem: number;
  /** factor, negative where inverted */
  gain: number;
  /** may be below 0, where its sound begins late enough */
  delay_samples: number;
}

/** How far up the field of the body as it is was solved for. */
export interface Field {
  /** above it the ball stands for the body */
  solved_to_hz: number;
  /** from here to there the ball takes over */
  join_from_hz: number;
  /** what the design asks for */
  asked_to_hz: number;
  /** solving so far would have taken too long */
  cut_short: boolean;
}

/** What of a plan changes with the spot, as short as can be: of many drivers in columns, and of the curves without their frequencies, which are those of the plan. */
export interface Figures {
  spot_m: Triple;
  channels: Output[];
  columns: Columns;
  levels: Levels;
  measures: Measures;
  /** only where there are several */
  seats?: Seating;
  echoes: Echo[];
  /** only where it is wanted */
  phase?: Phase;
}

/** Which files are to be had. */
export interface FilesAsked {
  text: string;
  what: string;
}

/** One second-order section. */
export interface Filter {
  name: string;
  frequency_hz: number;
  q: number;
  gain_db: number;
  b0: number;
  b1: number;
  b2: number;
  a1: number;
  a2: number;
}

/** One thing to know. */
export interface Finding {
  /** what kind it is, stable */
  code: string;
  /** danger, misfit, caution, cost or note */
  rank: string;
  /** what is wrong, with figures; a sentence without its full stop */
  what: string;
  /** what to do */
  cure?: string;
}

/** What to look out for in a plan. */
export interface Found {
  /** the findings in lines */
  warnings: string[];
  /** worst first */
  findings: Finding[];
}

/** What a search found, without settings. */
export interface FoundAnswer {
  search: Search;
}

/** How a driver is heard at the spot. */
export interface Heard {
  id: number;
  /** its id */
  channel: number;
  /** round the ball that stands for the body */
  path_m: number;
  /** by that path */
  arrival_us: number;
  /** from the driver itself */
  straight_path_m: number;
  /** by the model's own field: what smear is measured by; null: not computed */
  field_arrival_us: number | null;
  /** what its channel is set to */
  delay_us: number;
  /** of its direct sound; null: silent */
  level_db: number | null;
  /** from the spot */
  seen: boolean;
}

/** What is to be heard and how. */
export interface Hearing {
  programme: string;
  two_ears: boolean;
  dry: boolean;
}

/** How a body is held in the room, whose origin is the middle of the first body: forward, left and up are the room's. */
export interface Held {
  /** what it is fixed to: surface, ceiling or wall */
  on: string;
  at_m: Triple;
  /** where its front mark points, its own x */
  front: Triple;
  /** its own y */
  left: Triple;
  /** its own z */
  top: Triple;
  /** the number that its drivers begin with */
  first_driver: number;
  /** it is on the channels of the first body */
  shared: boolean;
  /** of its centre from the spot */
  distance_m: number;
  /** mean of its drivers, by energy, without delays */
  arrival_us: number;
  /** mean of its drivers, alike: what differs is the programme delay */
  delay_us: number;
  /** of its direct sound, over that of all bodies, by energy */
  level_db: number;
}

/** The loudest tone of an octave. */
export interface Highest {
  octave_hz: number;
  level_db: number;
  limited_by: string;
}

/** One key of the design file, as a field of the form. */
export interface KeyRow {
  key: string;
  table: string;
  name: string;
  /** what it is, in a few words */
  label: string;
  unit: string;
  kind: Kind;
  low: number;
  high: number;
  /** null: it is no choice */
  choices: string[] | null;
  default: Value;
  needed: boolean;
  remark: string;
}

/** How a segment comes off those that were there before it, and from where it goes onto them. */
export interface KitOff {
  /** from the front to the left */
  azimuth_deg: number;
  elevation_deg: number;
  /** by which it may go otherwise; 0: it slides along an edge */
  lean_deg: number;
}

/** One of them, printed solid. */
export interface KitPart {
  name: string;
  count: number;
  /** of one */
  mass_g: number;
  /** of one */
  hours: number;
  /** how a segment comes off those of lower numbers; null: nothing keeps it, or it is no segment */
  off: KitOff | null;
}

/** By how much the level of one driver can be off: because a ball stands for the body, most near its front (by boundary elements), or, where the body's own field is solved for, by what a finer mesh changes of it. */
export interface LevelError {
  octave_hz: number[];
  /** 0 for a ball, null in the models without a body */
  db: (number | null)[];
}

/** The curves, each at the frequencies that the plan's response has. */
export interface Levels {
  /** with the delays; null: silent */
  aligned_db: (number | null)[];
  /** without; null: silent */
  unaligned_db: (number | null)[];
  /** the most that timing can give; null: silent */
  in_step_db: (number | null)[];
}

/** A seat in the room. */
export interface Listener {
  /** its table: seat[2], or area[1] of which it is one; seats: all round at the spot's distance */
  key: string;
  name: string;
  at_m: Triple;
  weight: number;
}

/** What a channel's amplifier sees, and the most that a tone draws. */
export interface Load {
  /** where the load is least; null: not known */
  lowest_ohm: number | null;
  /** null: not known */
  lowest_hz: number | null;
  amplifier_v: number;
  amplifier_a: number;
  amplifier_w: number;
  /** of the driver that gets most; null: not known */
  driver_v: number | null;
  /** null: not known */
  driver_a: number | null;
  /** null: not known */
  driver_w: number | null;
}

/** By which factors cases are equally loud, and their highest peak at the ceiling. */
export interface LoudnessAnswer {
  gains: Record<string, number>;
}

/** What is to be equally loud. */
export interface LoudnessAsked extends Hearing {
  text: string;
  spot_m: Triple | null;
  at_m: Triple | null;
}

/** What recordings told, against the plan. */
export interface Measured {
  /** what is wrong, each a sentence */
  faults: string[];
  /** what else to know, each a sentence */
  notes: string[];
  /** in the plan itself, worst first */
  findings: Finding[];
  /** null: they were not recorded */
  channels: MeasuredChannel[] | null;
  /** null: the whole array was not recorded */
  level: MeasuredLevel | null;
  /** null: nothing was recorded at seats */
  seats: MeasuredSeats | null;
}

/** What recordings came to. */
export interface MeasuredAnswer extends Measured {
  /** how the whole array measured, in words */
  sentences: string[];
}

/** A band of a measured level. */
export interface MeasuredBand {
  band_hz: number;
  /** null: not known */
  measured_db: number | null;
  planned_db: number;
  /** null: not known */
  difference_db: number | null;
  /** one standard error; null: not known */
  error_db: number | null;
  /** null: not known */
  signal_to_noise_db: number | null;
}

/** What the recording of one channel told. */
export interface MeasuredChannel {
  id: number;
  planned_us: number;
  /** null: not known */
  measured_us: number | null;
  /** over the middle channel; null: not known */
  late_us: number | null;
  /** one standard error; null: not known */
  error_us: number | null;
  /** by the plan */
  set_delay_us: number;
  /** null: none follows */
  proposed_delay_us: number | null;
  /** over its siblings; null: silent, or not known */
  level_db: number | null;
  /** one standard error; null: not known */
  level_error_db: number | null;
  /** over siblings of like arrival; null: too few */
  beside_db: number | null;
  /** share of the energy that does not fit; null: not known */
  unlike: number | null;
  /** not recorded, or not usable */
  missing: boolean;
  reversed: boolean;
  silent: boolean;
  quiet: boolean;
  loud: boolean;
  /** from 1; null: none */
  dead_string: number | null;
}

/** What the recording of the whole array told. */
export interface MeasuredLevel {
  match_low_hz: number;
  match_high_hz: number;
  /** RMS difference of thirds of octaves between */
  uneven_db: number;
  bands: MeasuredBand[];
  frequency_hz: number[];
  /** null: not known */
  measured_db: (number | null)[];
  /** over sixths of octaves; null: not known */
  smoothed_db: (number | null)[];
  planned_db: number[];
  drift_ppm: number;
  gate_lowest_hz: number;
  inverted: boolean;
  warnings: string[];
}

/** What the recording at a seat told. */
export interface MeasuredSeat {
  /** from 1 */
  number: number;
  name: string;
  planned_db: number;
  measured_db: number;
  /** one standard error */
  error_db: number;
  planned_thirds_db: number[];
  measured_thirds_db: number[];
}

/** What recordings at seats told: losses against all drivers in step, in dB, over the seats that were recorded, where the microphone was; the plan's own figures are of heads that move. */
export interface MeasuredSeats {
  third_hz: number[];
  planned: SeatsLost;
  measured: SeatsLost;
  /** the measured mean is told by channels recorded one by one; else it is the planned one */
  mean_measured: boolean;
  /** by a wire in every recording; else each is matched to its own plan */
  levels_compared: boolean;
  each: MeasuredSeat[];
}

/** Of the direct sound, without the surface below or the room. */
export interface Measures {
  aligned: AtSpot;
  unaligned: AtSpot;
}

/** A text with the changes of both. */
export interface Merged {
  text: string;
  /** keys that mine put there */
  mine: string[];
  conflicts: Conflict[];
}

/** What two people made of one text. */
export interface Merging {
  base: string;
  mine: string;
  theirs: string;
  /** keys where mine holds though theirs differs */
  keep: string[];
}

/** How the body is heard, and how else it may be. */
export interface Model {
  /** the ball stands for the body until its field is solved for, by /api/solve */
  waits: boolean;
  /** how it is heard, in a sentence; empty: there is nothing to say */
  words: string;
  /** the model that one press takes in its place; empty: there is none */
  other: string;
  /** what is on the button for that */
  press: string;
}

/** Where a driver is in the room. */
export interface Mounted {
  id: number;
  at_mm: Triple;
  normal: Triple;
  /** across */
  cone_mm: number;
  /** across */
  flange_mm: number;
  /** which of the bodies it is on, from 0 */
  body: number;
}

/** A message that asks for a spot. */
export interface Move {
  seq: number;
  id: string;
  spot_m: Triple;
  /** of all seats that the design has, in its order; none: they are where it has them */
  seats_m: Triple[];
  /** above, side */
  view: View;
  /** level, direct_level, smear, comb_onset, summing_loss, loss; empty: no map */
  quantity: Quantity;
  /** of the map: empty as planned, chair of the chair alone, own of each place by itself */
  delays: Delays;
  /** what is tried with channels */
  turned: Turned[];
  /** wanted too: how the sound turns over frequency */
  phase: boolean;
  band_hz: number;
  /** of the map along one side, at the most */
  cells: number;
}

/** The answer to a move: the figures there, or why there are none. What is drawn follows. */
export interface Moved extends Partial<Figures> {
  seq: number;
  /** plan the text again */
  unknown?: boolean;
  /** why the spot is none */
  fault?: string;
  error?: string;
  /** where the spot is none, too */
  place?: Place;
  /** where something is tried */
  as_planned?: AsPlanned;
}

/** Something to choose, by its name, and what people call it. */
export interface Named {
  name: string;
  words: string;
  /** only where there are several seats */
  seats?: boolean;
}

/** One octave of a survey. */
export interface Octave {
  octave_hz: number;
  /** towards the spot, in open air */
  directivity_db: number;
  /** over one driver, in open air */
  power_db: number;
  /** round the listening circle */
  unevenness_db: number;
  /** area round the spot */
  within_3_db_m2: number;
  /** By ISO 3382-1, all drivers in parallel as the standard has it, and with the delays, which aim at the spot. null: the standard has no limit */
  omni_as_built_deviation_db: number | null;
  /** null: the standard has no limit */
  omni_as_built_pass: boolean | null;
  /** null: the standard has no limit */
  omni_deviation_db: number | null;
  /** null: the standard has no limit */
  omni_pass: boolean | null;
  /** standard deviation over all directions far away, by area; null: a direction is silent */
  spatial_as_built_db: number | null;
  /** null: a direction is silent */
  spatial_db: number | null;
  /** null: there is no room */
  reverb_sabine_s: number | null;
  /** null: there is no room */
  reverb_eyring_s: number | null;
}

/** Which of the designs that a search offers is to be opened. */
export interface OfferedAsked {
  file: string;
}

/** That design. */
export interface OfferedText {
  file: string;
  text: string;
}

/** What the design's file holds now, sent when that is known and when it changes. */
export interface OnDisk {
  /** as in started */
  read: string;
  text: string;
  /** there is no such file any more */
  gone: boolean;
  /** Wrong is why what is there in its place is not read; empty: it is. */
  wrong: string;
}

/** A channel with what it is set to. */
export interface Output {
  id: number;
  /** ids */
  drivers: number[];
  /** what can be set */
  delay_us: number;
  /** before rounding */
  exact_us: number;
  gain_db: number;
}

/** One of them, with what its mesh is made of. */
export interface PartHead extends KitPart {
  /** not where it goes in the whole: a jig, a cartridge, a test piece */
  loose: boolean;
  /** the loose part of that name where it goes: it is counted there */
  fitted: boolean;
  /** where it goes when the whole is taken apart */
  away_m: Triple;
  /** the lowest of each coordinate */
  low_m: Triple;
  step_m: number;
  corners: number;
  triangles: number;
}

/** The printed parts, in front of their meshes. */
export interface PartsHead {
  /** as in planAnswer */
  kit: string;
  /** how far they are moved in the picture of the whole taken apart, over away_m */
  apart: number;
  /** what they take, and what to mind, in sentences */
  say: string[];
  parts: PartHead[];
}

/** How the direct sound at the spot turns over frequency, behind the high-pass. */
export interface Phase {
  frequency_hz: number[];
  /** with the delays */
  aligned: Turn;
  /** without */
  unaligned: Turn;
  /** as one driver does alone */
  in_step: Turn;
}

/** How a phone comes to the view for the bench. */
export interface PhoneAnswer {
  /** this is the phone: it has the saved design's bench and wiring book, and nothing else of the page */
  on_phone: boolean;
  /** what to open on the phone; empty: there is no way in for one */
  address: string;
  /** the address for its camera */
  code: string[];
}

/** Where somebody sits, in the words that all screens have for it. */
export interface Place {
  /** along the floor */
  along_m: number;
  short: string;
  /** where to hold the tape */
  tape: string;
  high: string;
}

/** Plan.json. */
export interface Plan extends Partial<Survey>, Found {
  name: string;
  /** how the sound of a driver was computed */
  model: string;
  /** and the delays */
  delays_by: string;
  air: Air;
  /** the listening spot, from the body's centre */
  spot: Point;
  /** how each body is held; left out where all stand as designed */
  held?: Held[];
  ball: Ball;
  level_error: LevelError;
  /** only of the model body */
  field?: Field;
  drivers: Driver[];
  channels: Channel[];
  amplifier: Amplifier;
  /** what shorter strings cost and bring, from the shortest to the least smear */
  front: Strung[];
  protection: Protection;
  choices: Choice[];
  level_unit: string;
  response: Response;
  phase: Phase;
  measures: Measures;
  /** only where there are several */
  seats?: Seats;
  /** the deepest dip first */
  echoes: Echo[];
}

/** A design and everything that was worked out for it. */
export interface PlanAnswer {
  id: string;
  /** its channels for seats were found at once: ask again for the best */
  rough: boolean;
  name: string;
  text: string;
  /** of every key */
  values: Record<string, Value>;
  /** keys that the text has */
  given: string[];
  /** without a survey */
  plan: Plan;
  processor: Setting[];
  counts: Count[];
  protection: Protection;
  signs: string;
  rounding: Rounding;
  wiring: Bank[];
  /** what to know first, worst first, at most seven */
  findings: ShownFinding[];
  /** how many more there are */
  more_findings: number;
  place: Place;
  /** over the top, where the aim is all round */
  upright?: Polar;
  /** where people sit, those of areas last; none: the spot alone */
  seats: Listener[];
  /** the spot is a place of its own; else it is the middle seat */
  own_spot: boolean;
  /** by which rule strings are chosen, in words; empty where there is no choice */
  front_rule: string;
  model: Model;
  /** names the printed parts: the same for designs whose parts are the same */
  kit: string;
  solid: Solid;
  /** the other bodies, where there are several */
  others?: Solid[];
  drivers: Mounted[];
  /** places of the first body that are left empty */
  empty: Mounted[];
  /** what was found, in words */
  sentences: string[];
  spot_m: Triple;
  /** null: nothing below */
  floor_m: number | null;
  /** null: nothing above */
  ceiling_m: number | null;
  /** how far forward the wall behind is; null: none */
  wall_m: number | null;
  room: RoomBox | null;
  slice: SliceSize;
}

/** A design that is to be planned. */
export interface PlanAsked {
  text: string;
  /** what is found at once for seats will do */
  rough: boolean;
}

/** A place in the room. */
export interface Point {
  x_m: number;
  y_m: number;
  z_m: number;
}

/** The level round the vertical axis through the spot. */
export interface Polar {
  angle_deg: number[];
  band_hz: number[];
  /** [band][angle]; null: no sound can be there */
  level_db: (number | null)[][];
  /** without the delays; null: no sound can be there */
  unaligned_db: (number | null)[][];
}

/** What is known of a programme; its samples follow. */
export interface ProgrammeHead {
  rate: number;
  samples: number;
  frequency_hz: number[];
  /** weighted for loudness, at each frequency */
  energy: number[];
  ceiling: number;
  look_ahead_s: number;
  release_s: number;
}

/** The high-pass, the level and what limits it. */
export interface Protection {
  family: string;
  order: number;
  /** 0: none */
  corner_hz: number;
  /** the lowest corner that protects; null: none does */
  least_hz: number | null;
  level_dba: number;
  /** null: as long as you like */
  hours_a_day: number | null;
  highest: Highest[];
  /** mean of the octaves from 500 Hz to 4 kHz; null: not known */
  loudest_db: number | null;
}

/** What a meter shows, and between which values it is good. */
export interface Reading {
  ohm: number;
  low_ohm: number;
  high_ohm: number;
}

/** The level at the spot. */
export interface Response {
  frequency_hz: number[];
  /** with the delays; null: silent */
  aligned_db: (number | null)[];
  /** without; null: silent */
  unaligned_db: (number | null)[];
  /** the most that timing can give; null: silent */
  in_step_db: (number | null)[];
}

/** A room by its corners. */
export interface RoomBox {
  low_m: Triple;
  high_m: Triple;
}

/** How loud and how even a plan is all round, for nobody in particular, on circles round the body's axis. */
export interface Round {
  octave_hz: number[];
  /** of the circles, from the body's centre */
  height_m: number[];
  radius_m: number;
  /** as planned: 0 even to 1 loud */
  loud: number;
  planned: Circles;
  /** without delays, all in parallel */
  without: Circles;
  /** plans between even and loud */
  front: RoundPoint[];
}

/** A plan between even and loud. */
export interface RoundPoint {
  loud: number;
  /** mean over circles and octaves */
  gain_db: number;
  /** the greatest of any */
  deviation_db: number;
}

/** What setting the delays to the processor's step does. */
export interface Rounding {
  rate_hz: number;
  step_us: number;
  /** in every delay, to make rounding cheap */
  common_us: number;
  worst_us: number;
  octave_hz: number[];
  /** what it costs the direct sound at the spot; null: from half the rate on */
  loss_db: (number | null)[];
}

/** What the file is now. */
export interface Saved {
  saved: boolean;
  read: string;
}

/** A text for the design's file. */
export interface Saving {
  text: string;
  /** what the file was when it was read */
  read: string;
}

/** What a search found: search.json, and what the command prints with --json. */
export interface Search {
  title: string;
  /** how many designs were looked at, and how; a sentence without its full stop */
  how: string;
  seed: number;
  /** designs in all */
  space: number;
  /** that were looked at */
  screened: number;
  /** of these, that can be built and keep all limits */
  fit: number;
  /** that were planned in full */
  full: number;
  /** that were planned as small changes of the best */
  polished: number;
  /** ended before all was done */
  stopped: boolean;
  /** in the order of what matters */
  aims: SearchAim[];
  /** the designs offered */
  found: SearchFound[];
  /** all that were planned in full, and a sample of those screened alone */
  tried: SearchTried[];
  /** limits that bind, or that none keeps */
  short: SearchShort[];
  /** sentences on what no design can reach */
  reach: string[];
  /** which limits take away how many designs */
  binding: string[];
  /** null: no whole design was given */
  start: SearchStart | null;
}

/** Something that is sought. */
export interface SearchAim {
  /** loss, level, cost, evenness, drivers, price, hours or litres */
  aim: string;
  /** the figure that it is about */
  key: string;
  /** its name with its unit, and which way is better */
  axis: string;
  /** else less is */
  more_is_better: boolean;
}

/** What designs are judged by, and what is told of them. */
export interface SearchFigures {
  drivers: number;
  channels: number;
  /** against all drivers in step; of several seats what their aim makes of it */
  lost_db: number;
  /** mean of the octaves from 500 Hz to 4 kHz; null: not known */
  loudest_db: number | null;
  /** null: none */
  comb_onset_hz: number | null;
  /** over angle; null: not known of what was screened alone */
  unevenness_db: number | null;
  /** the resonance or the high-pass; null: not known */
  lowest_hz: number | null;
  /** null: not known */
  price: number | null;
  plastic_kg: number;
  /** null: not known */
  mass_kg: number | null;
  /** null: not known */
  print_hours: number | null;
  /** null: not known */
  inside_l: number | null;
  width_mm: number;
  /** with its stand */
  height_mm: number;
  depth_mm: number;
  /** that are printed; 0: more than one, and not counted */
  pieces: number;
}

/** A design that is offered. */
export interface SearchFound extends SearchFigures {
  /** from 1 */
  number: number;
  /** in the folder */
  file: string;
  name: string;
  /** a sentence without its full stop */
  why: string;
  reasons: SearchWhy[];
  settings: SearchSetting[];
  /** in its plan, worst first */
  findings: Finding[];
}

/** A key of the design file that was set. */
export interface SearchSetting {
  key: string;
  /** null: the key is taken out */
  value: Value;
}

/** A limit that no design keeps, or that binds. */
export interface SearchShort {
  key: string;
  /** in the key's unit */
  asked: number;
  /** that any design came to; null: not known */
  nearest: number | null;
  /** which */
  by: string;
  /** designs that broke it */
  broken: number;
  /** no design keeps it */
  none: boolean;
}

/** The design that was given, and how it stands. */
export interface SearchStart extends SearchFigures {
  /** nothing found beats it in all aims */
  on_front: boolean;
  /** number of a design offered that is nowhere worse; 0: none */
  better: number;
  /** limits that it breaks */
  broken: SearchShort[];
  words: string;
}

/** A design that was tried. */
export interface SearchTried extends SearchFigures {
  /** may be empty */
  name: string;
  /** screened, full or polished */
  stage: string;
  /** tried at random */
  random: boolean;
  /** no other that was planned in full beats it in all aims */
  front: boolean;
  /** among those offered; 0: it is none of them */
  number: number;
  /** index in the space; -1: none */
  variant: number;
  settings: SearchSetting[];
}

/** A reason why a design is offered. */
export interface SearchWhy {
  code: string;
  /** "": all on the front; one_piece; up_to */
  among: string;
  /** the drivers at most that up_to is about; else 0 */
  limit: number;
  /** null: none */
  value: number | null;
}

/** What one seat loses. */
export interface Seat extends Point {
  /** from 1 */
  number: number;
  name: string;
  /** as a tape measure finds it */
  where: string;
  weight: number;
  planned_db: number;
  middle_alone_db: number;
  without_db: number;
  /** null: not worked out */
  bound_db: number | null;
  planned_thirds_db: number[];
  middle_alone_thirds_db: number[];
  without_thirds_db: number[];
  /** null: not worked out */
  bound_thirds_db: (number | null)[];
}

/** What one seat loses, in dB. */
export interface SeatLost {
  name: string;
  /** as a tape measure finds it; only of seats at rest */
  where?: string;
  planned_db: number;
  middle_alone_db: number;
  without_db: number;
  /** null: not worked out */
  bound_db: number | null;
}

/** What seats lose, in short: of document.Seats what changes and is shown, that is nothing of single thirds, which are four fifths of it. */
export interface Seating {
  /** even, worst, mean or round */
  aim: string;
  /** its name */
  middle_seat: string;
  /** with the plan's delays, or those that are tried */
  planned: SeatsLost;
  /** with channels and delays for the middle seat alone */
  middle_alone: SeatsLost;
  /** without delays */
  without: SeatsLost;
  /** what no processing of the plan's channels can be below */
  bound: SeatsLost;
  each: SeatLost[];
  /** only where the aim is round */
  round?: Round;
}

/** How one set of delays serves several seats. Losses are in dB, against all drivers in step, over the thirds, as the loudspeaker sounds with what it stands on or hangs from, without the room. */
export interface Seats {
  /** even, worst, mean or round */
  aim: string;
  head_mm: number;
  third_hz: number[];
  /** its name */
  middle_seat: string;
  /** with the plan's delays */
  planned: SeatsLost;
  /** with channels and delays for the middle seat alone */
  middle_alone: SeatsLost;
  /** without delays */
  without: SeatsLost;
  /** what no processing of the plan's channels can be below */
  bound: SeatsLost;
  each: Seat[];
  /** What numbers of channels would leave, each with its own best delays. */
  counts: SeatsCount[];
  /** what shorter strings cost and bring, from the shortest */
  strings: SeatsStrings[];
  /** only where the aim is round */
  round?: Round;
  /** what all this comes to, in sentences */
  words: string[];
}

/** What a number of channels would leave. */
export interface SeatsCount extends SeatsLost {
  channels: number;
  /** drivers */
  longest_string: number;
}

/** Losses of all seats; null where they were not worked out. */
export interface SeatsLost {
  /** over the whole band at the seat that loses most; null: not worked out */
  worst_db: number | null;
  /** of the thirds' losses over seats, by their weights; holes count, so it may be above the worst; null: not worked out */
  mean_db: number | null;
  /** standard deviation between seats, RMS over the thirds; null: not worked out */
  between_db: number | null;
}

/** A plan for all seats with strings of so many drivers at most. */
export interface SeatsStrings extends SeatsLost {
  longest_string: number;
  /** what the aim makes small */
  aim_db: number;
  /** at the seats, from the same amplifier, than with strings of any length */
  louder_db: number;
  /** the plan's own */
  chosen: boolean;
}

/** What the processor is set to for one channel. */
export interface Setting {
  channel: number;
  /** the woofer's */
  name?: string;
  /** what can be set */
  delay_ms: number;
  delay_samples: number;
  delay_mm: number;
  /** before rounding */
  exact_us: number;
  /** what is set less that */
  residual_us: number;
  /** null: out of step, or from half the rate on */
  cost_4k_db: number | null;
  /** null: out of step, or from half the rate on */
  cost_8k_db: number | null;
  /** where the residual is a quarter of a period; null: from half the rate on */
  out_of_step_hz: number | null;
  gain_db: number;
  inverted: boolean;
  filters: Filter[];
}

/** One thing to know before a design is built. */
export interface ShownFinding {
  rank: string;
  /** the word that stands before it */
  lead: string;
  /** it should not be built so */
  stops: boolean;
  what: string;
  cure: string;
}

/** Half as wide as the map is, and how high its view from the side begins. */
export interface SliceSize {
  half_width_m: number;
  bottom_m: number;
}

/** A body as flat faces. */
export interface Solid {
  vertices_mm: Triple[];
  /** corners counter-clockwise from outside */
  faces: number[][];
}

/** The plan in which the ball stands for a body until its field is solved for, or of which the printed parts are wanted. */
export interface SolveAsked {
  /** empty: it is not wanted any more */
  id: string;
  /** the parts are wanted */
  kit?: boolean;
}

/** How far that is. */
export interface Solving {
  id: string;
  /** plan the text again */
  unknown?: boolean;
  /** plan the text again: it is by the field of the body then; or: the parts are there */
  solved?: boolean;
  /** why it cannot be */
  error?: string;
  /** part of the work */
  done: number;
  /** how far it is and what is left; empty: it has not begun */
  words: string;
}

/** The standard deviation of the level in dB over all directions far away, by area, as built and with the delays. The means are of 100 Hz to 4 kHz, each hertz alike. */
export interface Spatial {
  third_hz: number[];
  /** null: a direction is silent */
  as_built_third_db: (number | null)[];
  /** null: a direction is silent */
  third_db: (number | null)[];
  /** null: a direction is silent */
  as_built_mean_db: number | null;
  /** null: a direction is silent */
  mean_db: number | null;
}

/** What the page begins from. */
export interface Started {
  path: string;
  name: string;
  text: string;
  can_save: boolean;
  version: string;
  /** what the file was when it was read, for save */
  read: string;
  programmes: Named[];
  cases: Named[];
  /** null: none */
  files: Named[] | null;
  walks: Named[];
  /** there is what a search found */
  found: boolean;
  keys: KeyRow[];
  tables: TableRow[];
}

/** A stem without its samples. */
export interface StemHead {
  /** its number; 0: the ideal point, which is none */
  channel: number;
  /** index */
  filter: number;
  /** samples before its first one */
  from: number;
  /** for each ear */
  samples: number;
}

/** A part of a map of a quantity. Along and up are measured from the body's axis and centre. Its cells are those whose column c and row r of so many C and R have from <= max(|2c+1-C|, |2r+1-R|) < to, row after row, lowest first. */
export interface Strip {
  columns: number;
  rows: number;
  /** outer edges along and up */
  low_m: [number, number];
  high_m: [number, number];
  unit: string;
  /** held by cells without a comb onset */
  most_hz?: number;
  /** of the map of a chair at rest */
  fine?: boolean;
  /** of the map */
  last?: boolean;
  from: number;
  to: number;
  /** a cell's value is (least + its number) / per */
  least: number;
  per: number;
  /** numbers of two bytes, the low one first, in base64; 65535: no sound can be there */
  cells: string;
}

/** A split that no other beats in both smear and level. */
export interface Strung {
  /** drivers */
  longest_string: number;
  /** null: silent */
  smear_us: number | null;
  /** null: none up to the highest frequency */
  comb_onset_hz: number | null;
  /** than the last, at the spot; null: not known */
  louder_db: number | null;
  /** the most over each driver */
  driver_v: number;
  /** amplifier, or driver: it stands no more */
  limited_by: string;
  /** of any channel; null: not known */
  least_ohm: number | null;
  /** in one channel */
  most_drivers: number;
  /** the rule allows it */
  in_step: boolean;
  /** its choice */
  rule: boolean;
  /** the plan's own */
  chosen: boolean;
}

/** What the loudspeaker does beyond the spot. */
export interface Survey {
  octaves: Octave[];
  spatial: Spatial;
  /** area round the spot with the smear under the design's limit */
  in_step_area_m2: number;
}

/** One table of the design file. */
export interface TableRow {
  table: string;
  /** it stands for a thing that is there only if the table is */
  optional: boolean;
  /** there may be several, [[name]] */
  many: boolean;
  remark: string;
}

/** What is done of a string of drivers. Where the design strings drivers otherwise, it is another string, of which nothing is done. */
export interface Ticked {
  /** in the order of their joints */
  drivers: number[];
  /** of these */
  soldered: number[];
  /** it read well by itself */
  alone: boolean;
  /** and together with the others */
  joined: boolean;
}

/** A step that somebody has done, or takes back. */
export interface Ticking {
  /** of its string, in the order of their joints */
  drivers: number[];
  /** a driver is soldered, or the string read well */
  step: 'driver' | 'alone' | 'joined';
  /** which is soldered; 0: none */
  driver: number;
  done: boolean;
}

/** All that is ticked. */
export interface TicksAnswer {
  /** where it stands; empty: nowhere, keep it yourself */
  file: string;
  strings: Ticked[];
  /** what the design's file is now, as in started; empty: it is gone */
  read: string;
}

/** A phase whose first arrival is taken out, unwrapped over frequency, and its group delay after that. */
export interface Turn {
  /** after the instant of emission; null: silent */
  first_us: number | null;
  /** null: silent, or too many arrivals to be followed */
  phase_deg: (number | null)[];
  /** null likewise */
  group_delay_ms: (number | null)[];
}

/** What is tried with one channel. */
export interface Turned {
  /** its number */
  channel: number;
  off: boolean;
  reversed: boolean;
  /** later than planned; below 0: earlier */
  late_us: number;
}

/** Where the way ends, and how fast it is walked. */
export interface WalkAnswer {
  to_m: Triple;
  pace_m_s: number;
}

/** A way. */
export interface WalkAsked {
  text: string;
  from_m: Triple;
  /** one of the walks that are offered; empty: to a place */
  way: string;
  /** that place */
  to_m: Triple | null;
}

/** Asks for a better place. */
export interface WhereAsked {
  text: string;
  /** chair or body */
  what: string;
}

/** A better place: what the design is to have for it, and what that brings. */
export interface WhereFound {
  /** empty: there is none */
  set: Change[];
  words: string;
}

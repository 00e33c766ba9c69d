// What the page's types say more than those that are made from the server's structs.

import type { Figures, Heard, Place, Polar, Response, Strip } from "./document";

export type Maybe = number | null;

/** How a key of the design file is entered. */
export type Kind = "number" | "whole" | "choice" | "flag" | "text" | "list";

/** What a key may hold. */
export type Value = number | string | boolean | null | Value[];

export type View = "above" | "side";
export type Quantity = "level" | "smear" | "comb_onset" | "summing_loss" | "loss" | "direct_level";
/** Whose delays a map is of: as planned, of the chair alone, of each place by itself. */
export type Delays = "" | "chair" | "own";

/** A map, whole or as far as it has come. */
export interface Heat extends Pick<Strip, "columns" | "rows" | "low_m" | "high_m" | "unit" | "most_hz"> {
  /** Row by row, lowest first; null: no sound can be there, or it is not known yet. */
  values: Maybe[];
  /** Of a chair at rest. */
  isFine: boolean;
  isWhole: boolean;
}

/** How a driver is heard; the way is told of a chair at rest alone. */
export type Row = Pick<Heard, "id" | "channel" | "delay_us" | "level_db"> & { way: Way | null };
export type Way = Pick<Heard, "path_m" | "straight_path_m" | "arrival_us" | "field_arrival_us" | "seen">;

/** The figures of a move, in full. */
export interface Settled extends Omit<Figures, "columns" | "levels"> {
  seq: number;
  place: Place;
  drivers: Row[];
  response: Response;
  /** Round a chair at rest; null: not there yet. */
  polar: Polar | null;
  /** How far one may lean then, in the plane of a map; null: not there yet, or no nearer than the map's edge. */
  lean: { view: string; lines: [number, number][][] } | null;
}

// What the page's types say more than those that are made from the server's structs.

import type { Moved, Spot } from "./document";

export type Maybe = number | null;

/** How a key of the design file is entered. */
export type Kind = "number" | "whole" | "choice" | "flag" | "text" | "list";

/** What a key may hold. */
export type Value = number | string | boolean | null | Value[];

export type View = "above" | "side";
export type Quantity = "level" | "smear" | "comb_onset" | "summing_loss" | "loss";

/** The whole answer to a move. */
export type Settled = Moved & Spot;

/** What comes of a move: all of it, or why not. */
export type Answer = Settled | Omit<Moved, keyof Spot>;

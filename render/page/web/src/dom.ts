// Small helpers for the document.

/** The element of an id that index.html has. */
export function el<T extends HTMLElement = HTMLElement>(id: string): T {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`no element ${id}`);
  return found as T;
}

type Attributes = Record<string, string | number | boolean | undefined>;

/** Makes an element. An attribute that is false or undefined is left out, one that is true is empty. */
export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: (Node | string)[]
): HTMLElementTagNameMap[K] {
  const e = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) continue;
    e.setAttribute(name, value === true ? "" : String(value));
  }
  e.append(...children);
  return e;
}

/** Sets a text only where it is another, so that nothing is laid out again for nothing. */
export function say(e: Element, text: string): void {
  if (e.textContent === text) return;
  const { firstChild } = e;
  if (firstChild instanceof Text && firstChild.nextSibling === null && text !== "") firstChild.data = text;
  else e.textContent = text;
}

/** Hides an element, or shows it, where that is another: even the same has the page styled again. */
export function hide(e: HTMLElement, isHidden: boolean): void {
  if (e.hidden !== isHidden) e.hidden = isHidden;
}

/** Sets an attribute where it is another. */
export function mark(e: Element, name: string, value: string): void {
  if (e.getAttribute(name) !== value) e.setAttribute(name, value);
}

const inks = new Map<string, string>();

/** A colour of the page by the name of its custom property. They are kept, since asking lays the page out. */
export function ink(name: string): string {
  let found = inks.get(name);
  if (found === undefined) {
    found = getComputedStyle(document.documentElement).getPropertyValue(name).trim();
    inks.set(name, found);
  }
  return found;
}

/** Forgets the colours, for a page that has changed them. */
export function forgetInks(): void {
  inks.clear();
}

export interface Paper {
  context: CanvasRenderingContext2D;
  width: number;
  height: number;
}

/** How large canvases are; asking them in the middle of a frame would lay the page out. */
const sizes = new WeakMap<Element, { width: number; height: number }>();
const sizer = new ResizeObserver((entries) => {
  for (const { target, contentRect } of entries) sizes.set(target, { width: contentRect.width, height: contentRect.height });
});

/** How large a canvas is on the page, px. */
export function sizeOf(canvas: HTMLCanvasElement): { width: number; height: number } {
  const known = sizes.get(canvas);
  if (known !== undefined) return known;
  const now = { width: canvas.clientWidth, height: canvas.clientHeight };
  sizes.set(canvas, now);
  sizer.observe(canvas);
  return now;
}

/** A canvas at the screen's own sharpness, measured in CSS pixels. */
export function paper(canvas: HTMLCanvasElement): Paper | null {
  const { width, height } = sizeOf(canvas);
  const context = canvas.getContext("2d");
  if (context === null || width === 0 || height === 0) return null;
  const sharp = Math.min(window.devicePixelRatio || 1, 3);
  const w = Math.round(width * sharp);
  const h = Math.round(height * sharp);
  if (canvas.width !== w || canvas.height !== h) {
    canvas.width = w;
    canvas.height = h;
  }
  context.setTransform(sharp, 0, 0, sharp, 0, 0);
  return { context, width, height };
}

/** Calls back at most once a frame. */
export function framed(draw: () => void): () => void {
  let waits = false;
  return () => {
    if (waits) return;
    waits = true;
    requestAnimationFrame(() => {
      waits = false;
      draw();
    });
  };
}

/** Calls back once nothing has happened for so long. */
export function rested(ms: number, then: () => void): () => void {
  let timer = 0;
  return () => {
    window.clearTimeout(timer);
    timer = window.setTimeout(then, ms);
  };
}

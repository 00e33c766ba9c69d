// The parts of the page that follow the chair. What is out of view waits: until it comes into view, or until the
// chair rests, one part a frame.

interface Part {
  draw: (isRest: boolean) => void;
  isSeen: boolean;
  /** What is drawn is of a former chair. */
  isStale: boolean;
  /** That is of a chair that rests. */
  isRest: boolean;
}

/** Parts are drawn from so far on before they can be seen, in the window's own height and width. */
const AHEAD = "20%";

export class Parts {
  private readonly all: Part[] = [];
  private readonly of = new Map<Element, Part>();
  private isUnder = false;
  private readonly watch = new IntersectionObserver((entries) => {
    for (const { target, isIntersecting } of entries) {
      const part = this.of.get(target)!;
      part.isSeen = isIntersecting;
      if (isIntersecting && part.isStale) this.now(part);
    }
  }, { rootMargin: AHEAD });

  /** Adds a part that is in an element; until it is known where that is, it is seen. One of no element always is. */
  add(element: Element | null, draw: (isRest: boolean) => void): void {
    const part = { draw, isSeen: true, isStale: false, isRest: false };
    this.all.push(part);
    if (element === null) return;
    this.of.set(element, part);
    this.watch.observe(element);
  }

  /** Draws what is seen; what is not follows in the next frames, or for a chair that moves once it rests. */
  draw(isMoving: boolean, isRest: boolean): void {
    for (const part of this.all) {
      part.isStale = true;
      part.isRest ||= isRest;
      if (part.isSeen) this.now(part);
    }
    if (!isMoving) this.later();
  }

  private now(part: Part): void {
    const { isRest } = part;
    part.isStale = part.isRest = false;
    part.draw(isRest);
  }

  private later(): void {
    if (this.isUnder || !this.all.some((p) => p.isStale)) return;
    this.isUnder = true;
    requestAnimationFrame(() => {
      this.isUnder = false;
      const next = this.all.find((p) => p.isStale);
      if (next !== undefined) this.now(next);
      this.later();
    });
  }
}

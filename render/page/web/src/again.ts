// When a socket that was closed is opened again.

/** The server closed it for a newer page's sake; else it would take the place of another in its turn. */
const RESTS = 4001;

/** Says of a page that rests what to do. */
export const RESTING = "This page rests, since newer ones of the same program are open. Click in it, and it goes on";

export function isResting({ code }: CloseEvent): boolean {
  return code === RESTS;
}

/** Opens it after a while; where the page rests, when somebody turns to it. */
export function again(closed: CloseEvent, wait: number, open: () => void): void {
  if (!isResting(closed)) return void window.setTimeout(open, wait);
  const turned = new AbortController();
  const once = (): void => {
    turned.abort();
    open();
  };
  for (const what of ["focus", "pointerdown", "keydown"]) window.addEventListener(what, once, { signal: turned.signal });
}

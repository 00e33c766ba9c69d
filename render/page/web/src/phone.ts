// How a phone comes to the bench: a code for its camera, where the program lets one in.

import { el, make } from "./dom";
import type { PhoneAnswer } from "./document";

/** How wide the code's light margin is, in its squares. */
const MARGIN = 4;

/** Shows on the computer how a phone comes in; a phone is there already. */
export function phone({ on_phone, address, code }: PhoneAnswer): void {
  el("back").hidden = on_phone;
  el("phone").hidden = on_phone;
  if (on_phone) return;
  el("phone-how").replaceChildren(...(address === ""
    ? [make("p", {}, "Start the program with --phone, and a code for the phone’s camera is here.")]
    : [
        picture(code),
        make("p", {}, "Point the phone’s camera at the code, or type the address. The phone has to be in the same network as this computer."),
        make("p", { class: "address" }, address),
        make("p", { class: "quiet" }, "Who has this address can see what is soldered, and tick. It goes over plain http: who else is on the network can read it along the way, so use it only on one that you trust."),
      ]));
}

/** The code, dark on light in either theme, since cameras want it so. */
function picture(code: string[]): SVGElement {
  const NS = "http://www.w3.org/2000/svg";
  const svg = document.createElementNS(NS, "svg");
  const size = code.length + 2 * MARGIN;
  svg.setAttribute("viewBox", `${-MARGIN} ${-MARGIN} ${size} ${size}`);
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", "A code with the address below, for the phone’s camera");
  svg.setAttribute("class", "code");
  const path = document.createElementNS(NS, "path");
  path.setAttribute("d", code.flatMap((row, y) => [...row.matchAll(/1+/g)].map((m) => `M${m.index} ${y}h${m[0].length}v1h-${m[0].length}z`)).join(""));
  svg.append(path);
  return svg;
}

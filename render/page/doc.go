// Package page serves a page in the browser that shows a design and lets it be
// changed: the browser's side is in the folder built, embedded, and made from web
// by go generate.
//
// It is for one person on one machine. It answers only where the Host header, and
// the Origin header where there is one, name a loopback address: a foreign site
// can neither read it nor, by giving its own name this machine's address, speak to
// it. Other accounts of the machine can do neither without the secret that stands in the address
// and is a cookie from then on: without it all is 403. It runs no script but its own (Content Security Policy Level 3, W3C; Fetch
// and Origin, WHATWG; WebSocket, RFC 6455). The design's own path, and beside it
// the ticks of the bench, are the only files that it writes. A phone may be let in to the bench
// alone, by a listener of its own: see Phone.
//
// # API
//
// All is JSON, and the structs that are sent say what each key is; those of a plan are
// package document's. The page's own types, web/src/document.ts, are made from them.
// Requests are POST with Content-Type application/json unless said; fields that are not
// known are refused. What goes wrong is {"error": one line} with the status: 400 not
// understood, 403 no secret, a foreign host or origin, or nothing to save to, 409 the file changed,
// 413 too large, 415 not JSON, 429 too much at once, 501 not there. A design with faults is
// 422 with faults[] and, of /api/plan, where one press mends it, cure as /api/edit answers.
//
//	GET /api/start                  started
//	/api/plan     asked             planAnswer
//	/api/survey   asked             document.Survey
//	/api/edit     edits             edited: null remarks a key out, or a table that may be away, or
//	                                one of several, as seat[2];
//	                                what that breaks elsewhere in the design is mended, and said
//	                                in sentences: see package repair
//	/api/save     saving            saved
//	/api/ears     earsAsked         earsHead, and samples
//	/api/loudness loudnessAsked     loudnessAnswer
//	/api/walk     walkAsked         walkAnswer
//	GET /api/programme?name=        programmeHead, and samples
//	/api/where    whereAsked        whereFound
//	GET /api/found                  foundAnswer
//	/api/offered  offeredAsked      offeredText
//	/api/files    filesAsked        application/zip
//	/api/book     asked             bookAnswer
//	/api/parts    asked             partsHead, and meshes: the printed parts, once they are made
//	/api/bench    asked             benchAnswer
//	/api/ticks    {}                ticksAnswer: what is soldered, from the file beside the design
//	/api/tick     ticking           ticksAnswer, once that string's line is written
//	GET /api/phone                  phoneAnswer
//	/api/merge    merging           merged
//	/api/measure  a form            measuredAnswer
//
// A phone has of these /api/bench and /api/book with {}, of the design as it is saved, /api/ticks, /api/tick
// and /api/phone.
//
// Samples (application/octet-stream) are behind the length of their head in bytes (32 bit), a
// multiple of 4, and the head in JSON: numbers of 32 bit (IEEE 754), all little endian. The page
// convolves the programme with the stems, so that it hears at once what is moved or turned. Meshes are
// behind their head likewise, part by part: corners of 3 numbers of 16 bit, in steps from the part's
// lowest, filled up to 4 bytes; and sides of 3 corners of 32 bit. They are packed by gzip.
//
// The form (multipart/form-data, RFC 7578) has text, as_built (true: no delays were set) and
// up to 65 files named recording, WAV files of what the array played of its sweep, named as
// for pappus measure; 256 MB in all.
//
// There may be eight WebSockets of each kind; of more, that which was silent for longest is closed
// with 4001, and the page opens it again when somebody turns to it. Who does not answer a ping is
// gone.
//
// GET /api/watch is a WebSocket that tells what the design's file holds, onDisk, when another
// program has changed it; of the built-in design it says nothing.
//
// A body may be heard as it is (timing.model = "body"), by a field that takes up to minutes to solve
// for. While it is not at hand /api/plan answers with a plan in which the ball stands for the body,
// model.waits set, and nothing is given away to build from. GET /api/solve is a WebSocket on which the
// client sends solveAsked with that plan's id and gets solving, once a second and at the end: when
// it is solved, /api/plan has the plan by it. Bodies are solved for one at a time; the work goes on for a
// design that has the same body, and is given up for another. With kit set it is the same for the
// printed parts, of which /api/parts and the files "kit" are to be had then.
//
// GET /api/live is a WebSocket for a spot, or seats, that are being moved. The client sends a
// move and gets, for the newest one when the one before is done, a moved. Up to 32 cells is for
// dragging: such an answer is always finished. A finer one is for a spot at rest, and is
// given up when a newer message comes. Seats that are elsewhere than the design has them are
// served as well as can be in no time; in full they are by the plan of a design that has them
// there. What is turned of channels is tried: the figures, the map and the circle are of it, and
// as_planned has what the plan's own delays give. The map's delays may be others than the plan's:
// those of the chair alone, or each place's own, in which nothing is turned.
package page

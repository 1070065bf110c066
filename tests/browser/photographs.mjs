// Photographs of a delivery as a page hands them over: a plain JPEG within the limits.
import { createHash } from "node:crypto";
import { must } from "./acts.mjs";

const EACH = 256 * 1024, SIDE = 1600;

/** Width and height of a JPEG, and the marks of its parts before the picture (ITU-T T.81, B.2). */
export function outline(bytes) {
  const marks = [];
  let size = null;
  for (let at = 2; at < bytes.length;) {
    const mark = bytes[at + 1];
    marks.push(mark);
    if (mark === 0xc0 || mark === 0xc2) size = [bytes.readUInt16BE(at + 7), bytes.readUInt16BE(at + 5)];
    if (mark === 0xda) break;
    at += 2 + bytes.readUInt16BE(at + 2);
  }
  return { size, marks };
}

/** Wants a photograph to be its picture and nothing else, no larger than one may be, under its own digest. */
export function isPlain(bytes, sha256, what) {
  must(createHash("sha256").update(bytes).digest("hex") === sha256, `${what}: another digest`);
  must(bytes.length <= EACH, `${what}: ${bytes.length} bytes`);
  const { size, marks } = outline(bytes);
  must(size && Math.max(...size) <= SIDE, `${what}: ${size} pixels`);
  must(!marks.some((mark) => (mark > 0xe0 && mark < 0xee) || mark === 0xef || mark === 0xfe), `${what}: parts ${marks}`);
  must(!/Exif|QuarrelCam|loading bay/.test(bytes.toString("latin1")), `${what}: it tells more than its picture`);
  return size;
}

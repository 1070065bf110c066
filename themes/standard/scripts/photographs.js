// Photographs of what came: made smaller on this device, without anything but the picture, and kept here till they are
// handed over.
const Photographs = (() => {
  const STORE = "photographs", PATIENCE = 3000;
  /** As texts in base64, by the key under which they are kept. */
  const held = new Map();
  let lasts = true;
  const opened = () => new Promise((done, failed) => {
    const asked = indexedDB.open("bookmatch photographs", 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(STORE);
    asked.onsuccess = () => done(asked.result);
    asked.onerror = asked.onblocked = () => failed(asked.error);
    setTimeout(failed, PATIENCE);
  });
  /** Does one thing to what the device keeps, and waits until it is kept. */
  const inside = async (mode, act) => {
    const base = await opened();
    try {
      return await new Promise((done, failed) => {
        const deed = base.transaction(STORE, mode), asked = act(deed.objectStore(STORE));
        deed.oncomplete = () => done(asked.result);
        deed.onerror = deed.onabort = () => failed(deed.error);
      });
    } finally { base.close(); }
  };
  const keep = async (key, text) => {
    held.set(key, text);
    try { await inside("readwrite", (store) => store.put(text, key)); } catch { lasts = false; }
  };
  const drop = async (key) => {
    held.delete(key);
    try { await inside("readwrite", (store) => store.delete(key)); } catch { /* It takes room, and nothing names it. */ }
  };
  /** Whether a photograph is at hand; it is looked for where this page does not hold it yet. */
  const find = async (key) => {
    if (held.has(key)) return true;
    let text;
    try { text = await inside("readonly", (store) => store.get(key)); } catch { lasts = false; }
    if (typeof text === "string") held.set(key, text);
    return held.has(key);
  };
  /** The parts of a JPEG that a picture needs: no place, no time, no device. */
  const bare = (bytes) => {
    const parts = [bytes.subarray(0, 2)];
    for (let at = 2; at + 4 <= bytes.length && bytes[at] === 0xff;) {
      const mark = bytes[at + 1], end = at + 2 + bytes[at + 2] * 256 + bytes[at + 3];
      if (mark === 0xda) { parts.push(bytes.subarray(at)); break; }
      const head = mark === 0xe0 && end - at === 18, colours = mark === 0xee && end - at === 16;
      if (head || colours || !((mark >= 0xe0 && mark <= 0xef) || mark === 0xfe)) parts.push(bytes.subarray(at, end));
      at = end;
    }
    const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
    parts.reduce((at, part) => { all.set(part, at); return at + part.length; }, 0);
    return all;
  };
  const readAs = (file) => new Promise((done, failed) => {
    const reader = new FileReader();
    reader.onload = () => done(reader.result);
    reader.onerror = () => failed(reader.error);
    reader.readAsDataURL(file);
  });
  const decoded = async (file) => {
    const image = new Image();
    image.src = await readAs(file);
    await image.decode();
    return image;
  };
  /** Some browsers give no true picture out of a canvas, so that nobody is known by it: then there is none. */
  const isTrue = (canvas, draw) => {
    draw.fillStyle = "#f00";
    draw.fillRect(0, 0, canvas.width, canvas.height);
    const [red, green, blue] = draw.getImageData(0, 0, 1, 1).data;
    return red > 200 && green < 60 && blue < 60;
  };
  const drawn = (image, side) => {
    const scale = Math.min(1, side / Math.max(image.naturalWidth, image.naturalHeight));
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(image.naturalWidth * scale));
    canvas.height = Math.max(1, Math.round(image.naturalHeight * scale));
    const draw = canvas.getContext("2d");
    if (!isTrue(canvas, draw)) return null;
    draw.fillStyle = "#fff";
    draw.fillRect(0, 0, canvas.width, canvas.height);
    draw.imageSmoothingQuality = "high";
    draw.drawImage(image, 0, 0, canvas.width, canvas.height);
    return canvas;
  };
  const written = (canvas, quality) => new Promise((done) => { canvas.toBlob(done, "image/jpeg", quality); });
  /** A photograph's bytes within the limits; nothing where the browser can't read it. */
  const small = async (file, { side, each }) => {
    let image;
    try { image = await decoded(file); } catch { return null; }
    if (!image.naturalWidth) return null;
    for (const part of [1, 0.75, 0.5]) {
      const canvas = drawn(image, Math.floor(side * part));
      for (const quality of canvas ? [0.82, 0.68, 0.5] : []) {
        const blob = await written(canvas, quality);
        if (!blob || blob.type !== "image/jpeg") return null;
        const bytes = bare(new Uint8Array(await blob.arrayBuffer()));
        if (bytes.length <= each) return bytes;
      }
    }
    return null;
  };
  const base64 = (bytes) => {
    let text = "";
    for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
    return btoa(text);
  };
  return { small, base64, keep, drop, find, text: (key) => held.get(key), lasting: () => lasts };
})();

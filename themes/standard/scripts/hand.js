// Handing a file over: posted, shared, saved or sent by e-mail; and what was done, and when.
const Hand = (() => {
  const { w, fill, el, moment } = Paper;
  const PATIENCE = 30000;
  const fileOf = (name, text) => new File([text], name, { type: name.endsWith(".txt") ? "text/plain" : "application/json" });
  const save = (name, text) => {
    const address = URL.createObjectURL(fileOf(name, text));
    el("a", { href: address, download: name }).click();
    setTimeout(() => URL.revokeObjectURL(address), 60000);
  };
  /** The file as this device can share it: some share plain text alone. */
  const sharable = (name, text) => [name, `${name}.txt`].map((one) => fileOf(one, text)).find((file) => {
    try { return navigator.canShare?.({ files: [file] }); } catch { return false; }
  });
  const post = async (address, text) => {
    // Browsers of five years ago have no signal that ends by itself.
    const patience = new AbortController();
    setTimeout(() => patience.abort(), PATIENCE + text.length / 32);
    const reply = await fetch(address, { method: "POST", body: text, headers: { "content-type": "application/json" },
      credentials: "omit", redirect: "error", referrerPolicy: "no-referrer", signal: patience.signal });
    const told = await reply.json().catch(() => ({}));
    if (told["newest issue"]) dispatchEvent(new CustomEvent("newest issue", { detail: told["newest issue"] }));
    return { ok: reply.ok, status: reply.status, outcome: String(told.outcome ?? ""), why: String(told.why ?? ""), left: told["not taken"] ?? [] };
  };
  /** What the office's address said, in the page's own words where there are any. */
  const outcome = (told) => w.hand[`told_${told.replace(/ /g, "_")}`] ?? told;
  const refusal = ({ status, why, outcome }) => (status === 400 && why ? why : w.hand[`no_${status}`] ?? (why || outcome));
  const past = (list) => el("ul", { class: "past" }, ...list.map((one) => el("li", {},
    `${moment(one.at)}: ${w.hand[`by_${one.how}`]}${one.told ? `: ${outcome(one.told)}` : ""}`)));
  const letter = (email, subject, body) => `mailto:${email}?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(body)}`;
  /**
   * The ways to hand `text` over as a file called `name`. `done` gets how it was handed over, to be kept;
   * `list` tells all that was kept of it, and `called` what is called `room/item`.
   */
  const ways = ({ name, text, to, subject, list, done, called }) => {
    const heard = el("p", { class: "heard", role: "status" });
    const were = el("div", {});
    const tell = () => were.replaceChildren(past(list()));
    const say = (words, failed = false) => {
      heard.setAttribute("role", failed ? "alert" : "status");
      heard.classList.toggle("failed", failed);
      heard.textContent = words;
    };
    const handed = (how, words, told) => { done(how, told); tell(); say(words); };
    const saving = () => { save(name, text); handed("file", fill(w.hand.saved, { name })); };
    const posting = async (event) => {
      const button = event.currentTarget;
      button.setAttribute("aria-disabled", "true");
      say(w.hand.posting);
      try {
        const told = await post(to.post, text);
        const left = told.left.length && called ? ` ${fill(w.hand.not_taken, { names: told.left.map(called).join("; ") })}` : "";
        if (told.ok) handed("post", `${w.hand.posted} ${outcome(told.outcome)}.${left}`, told.outcome);
        else say(`${w.hand.refused} ${refusal(told)} ${w.hand.not_lost}`, true);
      } catch {
        say(`${w.hand.failed} ${w.hand.not_lost}`, true);
      }
      button.removeAttribute("aria-disabled");
    };
    const file = sharable(name, text);
    const sharing = () => navigator.share({ files: [file], title: subject }).then(() => handed("share", w.hand.shared), () => say(w.hand.not_shared));
    const mailing = () => { save(name, text); handed("mail", fill(w.hand.mailed, { name, email: to.email })); };
    const button = (words, click, plain) => el("button", { type: "button", class: plain ? "btn plain" : "btn", click }, words);
    tell();
    return el("div", { class: "form" }, el("div", { class: "acts ways" },
      to.post && button(w.hand.post, (event) => { if (!event.currentTarget.hasAttribute("aria-disabled")) posting(event); }),
      file && button(w.hand.share, sharing, to.post),
      button(w.hand.file, saving, to.post || file),
      to.email && el("a", { class: "btn plain", href: letter(to.email, subject, fill(w.hand.letter, { name })), click: mailing }, w.hand.mail)),
      heard, were);
  };
  return { ways, past };
})();

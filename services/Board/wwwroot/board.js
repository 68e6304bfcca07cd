// Every page: shows anew what changed in the warehouse, and lets a scanner end its code with Tab as well as with Enter.

const askEvery = 1000;
// Some parts age although nothing changes: how long ago a service was last seen.
const showOftenEvery = 10000;
const stateLine = document.getElementById("live-state");
/** The position this page was made at. */
let seen = document.getElementById("as-of")?.dataset.position ?? null;
let shownAt = performance.now();

/** Puts the parts marked data-live of a newly made page in place of the shown ones, unless somebody is typing in one. */
async function showAnew() {
    const answer = await fetch(location.href, { headers: { Accept: "text/html" }, redirect: "manual" });
    if (!answer.ok) {
        return false;
    }
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    for (const part of document.querySelectorAll("[data-live]")) {
        const fresh = page.getElementById(part.id);
        if (fresh && fresh.innerHTML !== part.innerHTML && !isBeingUsed(part)) {
            replaceInside(part, fresh);
        }
    }
    document.dispatchEvent(new Event("board:anew"));
    return true;
}

function isBeingUsed(part) {
    const fields = [...part.querySelectorAll("input:not([type=hidden]), textarea, select")];
    return part.contains(document.activeElement) && document.activeElement.matches("input, textarea, select")
        || fields.some(field => field.value !== (field.defaultValue ?? field.value)) || part.querySelector("details[open] form") !== null;
}

/** Keeps the keyboard where it was, the element of the same name or address gets the focus again, and leaves open what a person opened. */
function replaceInside(part, fresh) {
    const held = part.contains(document.activeElement) ? document.activeElement : null;
    const find = held && (held.id ? "#" + CSS.escape(held.id) : held.matches("a[href]") ? `a[href="${CSS.escape(held.getAttribute("href"))}"]` : null);
    const folds = [...part.querySelectorAll("details")].map(fold => fold.open);
    part.replaceChildren(...fresh.childNodes);
    const freshFolds = [...part.querySelectorAll("details")];
    if (freshFolds.length === folds.length) {
        freshFolds.forEach((fold, at) => { fold.open = folds[at]; });
    }
    if (find) {
        part.querySelector(find)?.focus({ preventScroll: true });
    }
}

async function ask() {
    if (document.hidden) {
        return;
    }
    try {
        const answer = await fetch("/live", { redirect: "manual" });
        if (!answer.ok) {
            return say(answer.status === 401 ? "signed-out" : "away");
        }
        const position = await answer.text();
        const ages = document.querySelector("[data-often]") && performance.now() - shownAt > showOftenEvery;
        if (seen !== null && (seen !== position || ages)) {
            if (!await showAnew()) {
                return say("away");
            }
            shownAt = performance.now();
        }
        seen = position;
        say("");
    } catch {
        say("away");
    }
}

function say(state) {
    const text = state ? stateLine.dataset[state === "away" ? "away" : "signedOut"] ?? "" : "";
    if (stateLine.textContent !== text) {
        stateLine.textContent = text;
    }
}

/** A person needs longer than this between two keys; a scanner does not. */
const slowestScanner = 50;
let lastKey = 0;
let quickKeys = 0;

document.addEventListener("keydown", event => {
    const field = event.target;
    if (!(field instanceof HTMLInputElement) || !field.hasAttribute("data-scan")) {
        return;
    }
    const quick = event.timeStamp - lastKey < slowestScanner;
    lastKey = event.timeStamp;
    if (event.key === "Tab" && quick && quickKeys > 3) {
        event.preventDefault();
        field.dispatchEvent(new CustomEvent("scanned", { bubbles: true }));
        if (field.form && !field.form.hasAttribute("data-sheet")) {
            field.form.requestSubmit();
        }
    }
    quickKeys = quick ? quickKeys + 1 : 0;
});

for (const button of document.querySelectorAll("[data-print]")) {
    button.hidden = false;
    button.addEventListener("click", () => print());
}

if (stateLine && document.querySelector("[data-live]:not(#as-of)")) {
    setInterval(ask, askEvery);
    ask();
}

// Bench sheets: every keystroke is kept in the browser at once; finished sheets wait there until the board has taken them.

import { isBarcode } from "/barcode.js";

const bench = document.getElementById("bench");
const words = bench.dataset;
const stateLine = document.getElementById("bench-state");
const list = document.getElementById("bench-outbox");
const tryEvery = 5000;
const prefix = `bench.${words.by}.`;
const outboxKey = "bench.outbox";

const read = (key, otherwise) => JSON.parse(localStorage.getItem(key) ?? "null") ?? otherwise;

function keep(key, value) {
    try {
        localStorage.setItem(key, JSON.stringify(value));
    } catch {
        tell(words.noRoom);
    }
}

function tell(text) {
    if (stateLine.textContent !== text) {
        stateLine.textContent = text;
    }
}

class Sheet {
    constructor(form) {
        this.form = form;
        this.name = form.dataset.sheet;
        this.section = form.closest("section");
        this.rows = read(this.key("rows"), []);
        this.columns = [...this.section.querySelectorAll("th[data-column]")].map(head => head.dataset.column);
        this.fill(read(this.key("draft"), {}));
        form.addEventListener("input", () => keep(this.key("draft"), this.draft()));
        form.addEventListener("submit", event => {
            event.preventDefault();
            this.note();
        });
        form.addEventListener("scanned", () => this.note());
        this.part("send").addEventListener("click", () => this.finish());
        this.part("next-tuber")?.addEventListener("click", () => this.nextTuber());
        this.show();
    }

    key(what) {
        return `${prefix}${this.name}.${what}`;
    }

    part(name) {
        return this.section.querySelector(`[data-part="${name}"]`);
    }

    draft() {
        const cells = {};
        for (const field of this.form.elements) {
            if (field.type === "checkbox") {
                cells[field.name] = field.checked ? "1" : "0";
            } else if (field.name && (field.type !== "radio" || field.checked)) {
                cells[field.name] = field.value.trim();
            }
        }
        return cells;
    }

    fill(cells) {
        for (const field of this.form.elements) {
            const value = cells[field.name];
            if (value === undefined) {
                continue;
            }
            if (field.type === "radio") {
                field.checked = field.value === value;
            } else if (field.type === "checkbox") {
                field.checked = value === "1";
            } else {
                field.value = value;
            }
        }
    }

    /** Takes the row when it is whole; otherwise leads to what is missing, which after a scan is the next field. */
    note() {
        const cells = this.draft();
        if (cells.sample !== undefined) {
            cells.sample = cells.sample.toUpperCase();
            if (!isBarcode(cells.sample)) {
                return this.fault(words.check, this.form.elements.sample);
            }
        }
        const missing = [...this.form.elements].find(field => field.willValidate && !field.checkValidity());
        if (missing) {
            const fresh = missing.type === "radio" ? !cells[missing.name] : missing.value === "";
            return this.fault(fresh && missing !== this.form.elements[0] ? "" : words.empty, missing);
        }
        this.fault("");
        this.rows = this.rows.filter(row => !this.isSame(row.cells, cells));
        this.rows.push({ at: new Date().toISOString(), cells });
        keep(this.key("rows"), this.rows);
        this.clear(cells);
        keep(this.key("draft"), this.draft());
        this.show();
        tell(words.noted.replace("{0}", this.columns.map(column => cells[column]).join(", ")));
    }

    /** A sample judged twice on one sheet, or a chip scored twice, is a correction of the first. */
    isSame(one, other) {
        return one.batch === undefined
            ? ["sample", "tuber", "slice"].every(column => one[column] === other[column])
            : one.batch === other.batch && one.batch !== "";
    }

    clear(cells) {
        for (const field of this.form.elements) {
            if (field.type === "radio" || field.type === "checkbox") {
                field.checked = false;
            } else if (field.name && !field.hasAttribute("data-keeps")) {
                field.value = "";
            }
        }
        if (cells.slice !== undefined) {
            this.form.elements.slice.value = String(Number(cells.slice) + 1);
            this.form.elements.stem_end[0].focus();
        } else {
            this.form.elements[0].focus();
        }
    }

    nextTuber() {
        this.form.elements.tuber.value = String(Number(this.form.elements.tuber.value) + 1);
        this.form.elements.slice.value = "1";
        keep(this.key("draft"), this.draft());
        this.form.elements.stem_end[0].focus();
    }

    fault(text, field) {
        this.part("fault").textContent = text;
        if (field) {
            field.focus();
            field.select?.();
        }
    }

    show() {
        this.part("rows").replaceChildren(...this.rows.map((row, at) => {
            const line = document.createElement("tr");
            for (const column of this.columns) {
                const cell = line.insertCell();
                const value = row.cells[column];
                cell.textContent = ["greening", "hollow_heart"].includes(column) ? (value === "1" ? words.yes : words.no) : value;
            }
            const button = document.createElement("button");
            button.type = "button";
            button.textContent = words.remove;
            button.setAttribute("aria-label", `${words.remove} ${row.cells[this.columns[0]]}`);
            button.addEventListener("click", () => {
                this.rows.splice(at, 1);
                keep(this.key("rows"), this.rows);
                this.show();
            });
            line.insertCell().append(button);
            return line;
        }));
        this.part("send").disabled = this.rows.length === 0;
    }

    finish() {
        const entry = { id: crypto.randomUUID(), sheet: this.name, by: words.by, rows: this.rows };
        keep(outboxKey, [...read(outboxKey, []), entry]);
        this.rows = [];
        keep(this.key("rows"), []);
        this.show();
        sendAll();
    }

    takeBack(entry) {
        this.rows = [...entry.rows, ...this.rows];
        keep(this.key("rows"), this.rows);
        this.show();
        select(this.name);
    }
}

const faults = new Map();
let sending = false;

/** Sends what waits, oldest first; whatever goes wrong, nothing leaves the browser before the board has said that it has it. */
async function sendAll() {
    if (sending) {
        return;
    }
    sending = true;
    let last = "";
    try {
        for (const entry of read(outboxKey, [])) {
            if (!faults.has(entry.id)) {
                last = await send(entry) ?? last;
            }
        }
    } catch {
        // No connection: tried again in a while.
    }
    sending = false;
    showOutbox(last);
}

async function send(entry) {
    const token = await fetch("/bench/token", { redirect: "manual" });
    if (!token.ok) {
        throw new Error(String(token.status));
    }
    const answer = await fetch("/bench/entries", {
        method: "POST",
        headers: { "Content-Type": "application/json", "X-Board-Form": await token.text() },
        body: JSON.stringify(entry),
    });
    if (answer.ok) {
        keep(outboxKey, read(outboxKey, []).filter(other => other.id !== entry.id));
        return words.sentAs.replace("{0}", (await answer.json()).file);
    }
    if (answer.status === 422 || answer.status === 409) {
        faults.set(entry.id, { whose: answer.status === 409, texts: (await answer.json()).faults });
        return null;
    }
    throw new Error(String(answer.status));
}

function showOutbox(last) {
    const waiting = read(outboxKey, []);
    list.replaceChildren(...waiting.map(entry => {
        const line = document.createElement("li");
        const fault = faults.get(entry.id);
        line.textContent = `${entry.sheet}, ${entry.rows.length}, ${entry.by}. ${fault ? (fault.whose ? "" : words.refused + " ") + fault.texts.join(" ") : ""}`;
        if (fault && !fault.whose) {
            const button = document.createElement("button");
            button.type = "button";
            button.textContent = words.back;
            button.addEventListener("click", () => {
                keep(outboxKey, read(outboxKey, []).filter(other => other.id !== entry.id));
                faults.delete(entry.id);
                sheets.find(sheet => sheet.name === entry.sheet).takeBack(entry);
                showOutbox("");
            });
            line.append(" ", button);
        }
        return line;
    }));
    const unsent = waiting.length;
    tell(unsent > 0 ? words.waiting.replace("{0}", String(unsent)) : last || words.sent);
}

function select(name) {
    for (const button of bench.querySelectorAll("[data-show]")) {
        const chosen = button.dataset.show === name;
        button.setAttribute("aria-pressed", String(chosen));
        document.getElementById("sheet-" + button.dataset.show).hidden = !chosen;
    }
    keep(prefix + "shown", name);
}

const sheets = [...document.querySelectorAll("form[data-sheet]")].map(form => new Sheet(form));
for (const button of bench.querySelectorAll("[data-show]")) {
    button.addEventListener("click", () => {
        select(button.dataset.show);
        document.querySelector(`#sheet-${button.dataset.show} input`).focus();
    });
}
select(read(prefix + "shown", sheets[0].name));
showOutbox("");
sendAll();
setInterval(() => read(outboxKey, []).length > 0 && sendAll(), tryEvery);
addEventListener("online", sendAll);

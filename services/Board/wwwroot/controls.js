// Draws the table of runs as a control chart; the table stays for whoever cannot see one.

import { draw, ink, loadCharts } from "./chart.js";

// Told apart by shape as well as by ink: full circle, open square, triangle, cross.
const marks = {
    "within": { symbol: "circle", color: "#155a5e", size: 8 },
    "failed": { symbol: "square-open", color: "#8e1b2c", size: 13, line: { width: 3 } },
    "drift": { symbol: "triangle-up", color: "#7a4a00", size: 12 },
    "not judged": { symbol: "x", color: "#5b554b", size: 8 },
};

/** More names than this run into each other below the chart. */
const mostNames = 16;

const chart = document.getElementById("chart");

function rowsInTime() {
    return [...document.querySelectorAll("#control-runs tbody tr")].map(row => row.dataset).reverse();
}

function number(text) {
    return text === "" || text === undefined ? null : Number(text);
}

function line(rows, name, key, dash) {
    return { name, x: rows.map((_, at) => at + 1), y: rows.map(row => number(row[key])), mode: "lines", line: { color: ink, width: 1, dash, shape: "hvh" }, hoverinfo: "y+name" };
}

function show() {
    const rows = rowsInTime();
    const names = rows.map((row, at) => ({ at: at + 1, row }));
    const series = [
        { name: chart.dataset.y, x: names.map(({ at }) => at), y: rows.map(row => number(row.value)), mode: "lines", line: { color: "#857b67", width: 1 }, hoverinfo: "skip", showlegend: false },
        line(rows, chart.dataset.upper, "upper", "dash"),
        line(rows, chart.dataset.centre, "centre", "solid"),
        line(rows, chart.dataset.lower, "lower", "dash"),
    ];
    for (const [kind, mark] of Object.entries(marks)) {
        const of = names.filter(({ row }) => row.kind === kind);
        if (of.length > 0) {
            series.push({ name: of[0].row.words, x: of.map(({ at }) => at), y: of.map(({ row }) => number(row.value)), text: of.map(({ row }) => row.run), mode: "markers", marker: mark, hoverinfo: "text+y+name" });
        }
    }
    const named = names.filter(({ at }) => (at - 1) % Math.ceil(rows.length / mostNames) === 0);
    draw(chart, series, { title: { text: chart.dataset.x }, tickvals: named.map(({ at }) => at), ticktext: named.map(({ row }) => row.run), automargin: true }, { title: { text: chart.dataset.y } });
}

if (chart) {
    await loadCharts();
    show();
    document.addEventListener("board:anew", show);
}

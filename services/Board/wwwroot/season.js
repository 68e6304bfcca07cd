// Draws the table of plot means as an interactive chart; the table stays for whoever cannot see one.

import { draw, loadCharts } from "./chart.js";

const marks = ["circle", "square", "diamond", "triangle-up", "triangle-down", "cross", "x", "star"];
const dashes = ["solid", "dash", "dot", "dashdot"];
// Told apart in grey and by readers who see few colours as well: each series has a mark and a dash of its own too. At least 3 : 1 on the paper.
const inks = ["#155a5e", "#8e1b2c", "#7a4a00", "#2f4f80", "#2b6142", "#6a3d7c", "#5b554b", "#a0342b", "#00688b", "#56661a", "#8a3a6b", "#24211c"];

const chart = document.getElementById("chart");
const button = document.getElementById("scale");
let logarithmic = false;

function seriesOfTable() {
    return [...document.querySelectorAll("#season-means tbody tr")].map((row, at) => {
        const cells = [...row.querySelectorAll("td[data-mean]")];
        const mark = marks[at % marks.length];
        return {
            name: row.dataset.series,
            x: cells.map(cell => Number(cell.dataset.day)),
            y: cells.map(cell => Number(cell.dataset.mean)),
            text: cells.map(cell => cell.title),
            error_y: { type: "data", array: cells.map(cell => Number(cell.dataset.error || 0)), thickness: 1, width: 3 },
            mode: "lines+markers",
            line: { color: inks[at % inks.length], dash: dashes[at % dashes.length], width: 2 },
            // A mean with results in doubt is an open mark.
            marker: { symbol: cells.map(cell => cell.dataset.doubt ? mark + "-open" : mark), size: cells.map(cell => cell.dataset.doubt ? 12 : 8) },
        };
    });
}

function show() {
    draw(chart, seriesOfTable(), { title: { text: chart.dataset.x } }, { title: { text: chart.dataset.y }, type: logarithmic ? "log" : "linear" });
}

if (chart) {
    await loadCharts();
    show();
    button.hidden = false;
    button.addEventListener("click", () => {
        logarithmic = !logarithmic;
        button.textContent = logarithmic ? chart.dataset.linear : chart.dataset.log;
        show();
    });
    document.addEventListener("board:anew", show);
}

// Draws the table of plot means as an interactive chart; the table stays for whoever cannot see one.

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
        return {
            name: row.dataset.series,
            x: cells.map(cell => Number(cell.dataset.day)),
            y: cells.map(cell => Number(cell.dataset.mean)),
            error_y: { type: "data", array: cells.map(cell => Number(cell.dataset.error || 0)), thickness: 1, width: 3 },
            mode: "lines+markers",
            line: { color: inks[at % inks.length], dash: dashes[at % dashes.length], width: 2 },
            marker: { symbol: marks[at % marks.length], size: 8 },
        };
    });
}

function draw() {
    const layout = {
        height: 480,
        margin: { t: 16, r: 16, b: 56, l: 72 },
        paper_bgcolor: "rgba(0,0,0,0)",
        plot_bgcolor: "rgba(0,0,0,0)",
        font: { family: "system-ui, sans-serif", size: 13, color: "#24211c" },
        xaxis: { title: { text: chart.dataset.x }, gridcolor: "#cfc7b4" },
        yaxis: { title: { text: chart.dataset.y }, type: logarithmic ? "log" : "linear", gridcolor: "#cfc7b4" },
        legend: { orientation: "v" },
        hovermode: "closest",
    };
    window.Plotly.react(chart, seriesOfTable(), layout, { responsive: true, displayModeBar: false });
}

function load() {
    return new Promise((resolve, reject) => {
        const script = document.createElement("script");
        script.src = "/plotly.js";
        script.onload = resolve;
        script.onerror = reject;
        document.head.append(script);
    });
}

if (chart) {
    await load();
    draw();
    button.hidden = false;
    button.addEventListener("click", () => {
        logarithmic = !logarithmic;
        button.textContent = logarithmic ? chart.dataset.linear : chart.dataset.log;
        draw();
    });
    document.addEventListener("board:anew", draw);
}

// What the charts of all pages share: the chart library, loaded once, and how a chart looks.

export const ink = "#24211c";
export const rule = "#cfc7b4";

export function loadCharts() {
    return new Promise((resolve, reject) => {
        const script = document.createElement("script");
        script.src = "/plotly.js";
        script.onload = resolve;
        script.onerror = reject;
        document.head.append(script);
    });
}

/** Draws series into the element; axes are told apart by their titles. */
export function draw(element, series, xaxis, yaxis) {
    const layout = {
        height: 480,
        margin: { t: 16, r: 16, b: 56, l: 72 },
        paper_bgcolor: "rgba(0,0,0,0)",
        plot_bgcolor: "rgba(0,0,0,0)",
        font: { family: "system-ui, sans-serif", size: 13, color: ink },
        xaxis: { gridcolor: rule, ...xaxis },
        yaxis: { gridcolor: rule, ...yaxis },
        legend: { orientation: "v" },
        hovermode: "closest",
    };
    window.Plotly.react(element, series, layout, { responsive: true, displayModeBar: false });
}

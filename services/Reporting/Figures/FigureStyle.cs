using ScottPlot;

namespace LabPipeline.Reporting.Figures;

/// <summary>The looks shared by all figures: told apart by colour, mark and line pattern at once, so that they also read in grey.</summary>
internal static class FigureStyle
{
    /// <summary>Named outright, so that the same file comes out wherever this font is.</summary>
    private const string FontName = "DejaVu Sans";

    private const float TextSize = 13;

    // The eight colours of Okabe and Ito (2008) that people with common colour blindness tell apart; yellow last, it is faint on white.
    private static readonly string[] Hues = ["#0072B2", "#D55E00", "#009E73", "#CC79A7", "#000000", "#E69F00", "#56B4E9", "#B8A800"];

    private static readonly MarkerShape[] Marks =
        [MarkerShape.FilledCircle, MarkerShape.FilledSquare, MarkerShape.FilledTriangleUp, MarkerShape.OpenCircle, MarkerShape.FilledDiamond, MarkerShape.OpenSquare, MarkerShape.FilledTriangleDown, MarkerShape.OpenTriangleUp];

    public static Color Hue(int index) => Color.FromHex(Hues[index % Hues.Length]);

    public static MarkerShape Mark(int index) => Marks[index % Marks.Length];

    /// <summary>A horizontal line of a limit.</summary>
    public static ScottPlot.Plottables.HorizontalLine Rule(Plot plot, double at, bool dashed) =>
        plot.Add.HorizontalLine(at, LineDash.Width(1.5f, dashed ? LineDash.Rule : 0), Colors.Black);

    /// <summary>From pale to dark: an ordered scale keeps its order in grey.</summary>
    public static Color Step(int index, int count)
    {
        var share = count < 2 ? 0 : index / (count - 1.0);
        byte Mix(int pale, int dark) => (byte)(pale + ((dark - pale) * share));
        return new Color(Mix(0xF3, 0x3B), Mix(0xEE, 0x1F), Mix(0xDD, 0x0F));
    }

    public static Plot NewPlot(string xLabel, string yLabel)
    {
        var plot = new Plot();
        plot.FigureBackground.Color = Colors.White;
        plot.DataBackground.Color = Colors.White;
        plot.Grid.MajorLineColor = Color.FromHex("#E4E4E4");
        plot.XLabel(xLabel, TextSize);
        plot.YLabel(yLabel, TextSize);
        plot.Axes.Left.Label.Bold = false;
        plot.Axes.Bottom.Label.Bold = false;
        plot.Axes.Left.TickLabelStyle.FontSize = TextSize - 1;
        plot.Axes.Bottom.TickLabelStyle.FontSize = TextSize - 1;
        plot.Axes.Top.FrameLineStyle.Width = 0;
        plot.Axes.Right.FrameLineStyle.Width = 0;
        plot.HideLegend();
        return plot;
    }

    public static string Draw(Plot plot, int width, int height, string id, string title, string description)
    {
        plot.Font.Set(FontName);
        plot.Legend.FontName = FontName;
        return SvgText.Accessible(plot.GetSvgXml(width, height), id, title, description);
    }

    public static void Legend(Plot plot, Edge edge = Edge.Bottom)
    {
        var panel = plot.ShowLegend(edge);
        panel.Legend.FontSize = TextSize - 1;
        panel.Legend.OutlineWidth = 0;
        panel.Legend.ShadowColor = Colors.Transparent;
        panel.Legend.BackgroundColor = Colors.White;
        panel.Legend.Orientation = edge == Edge.Bottom ? Orientation.Horizontal : Orientation.Vertical;
        panel.Legend.FontName = FontName;
    }
}

using System.Globalization;
using LabPipeline.Reporting.Printing;

namespace LabPipeline.Reporting.Labels;

/// <summary>Collects the marks of one label; a text wider than its box becomes a fault that names label and field and is not drawn.</summary>
internal sealed class FaceBuilder(LabelText label, TextWidths widths)
{
    /// <summary>Below it, text on a wet label is not read. Common practice, no source.</summary>
    private const double SmallestText = 1.4;

    // Width comparisons carry the rounding of sums of millimetres.
    private const double Tolerance = 0.001;

    public List<Mark> Marks { get; } = [];

    public List<LabelFault> Faults { get; } = [];

    public double WidthOf(string text, double size, bool bold) => widths.Of(text, size, bold);

    /// <param name="field">What the text is, for the fault.</param>
    /// <param name="text">Drawn whole or not at all.</param>
    /// <param name="box">The box it must fit: left, baseline and width.</param>
    /// <param name="size">Size of the font.</param>
    /// <param name="bold">Whether in bold.</param>
    /// <param name="align">0 at the left of the box, 0.5 in its middle, 1 at its right.</param>
    public void Put(string field, string text, (double Left, double Baseline, double Width) box, double size, bool bold = false, double align = 0)
    {
        if (size < SmallestText)
        {
            Faults.Add(new LabelFault(
                $"{label.Name}, field {field}", $"room for text of {Text(size)} mm", $"at least {Text(SmallestText)} mm", "Use a taller label or a smaller symbol."));
            return;
        }

        var width = widths.Of(text, size, bold);
        if (width > box.Width + Tolerance)
        {
            Faults.Add(new LabelFault(
                $"{label.Name}, field {field}", $"'{text}', {Text(width)} mm wide", $"at most {Text(Math.Max(0, box.Width))} mm", "Shorten it in the plan, or use a wider label; nothing is cut."));
            return;
        }

        Marks.Add(new Mark.Words(box.Left + ((box.Width - width) * align), box.Baseline, text, size, bold));
    }

    /// <summary>Draws a symbol at its place, quiet zone left out.</summary>
    public void Draw(SymbolModules symbol, double left, double top, double module, double rowHeight) => Marks.AddRange(symbol.Runs()
        .Select(run => new Mark.Fill(left + (run.First * module), top + (run.Row * rowHeight), run.Count * module, rowHeight)));

    public void RefuseSymbol(string found, string expected) =>
        Faults.Add(new LabelFault($"{label.Name}, symbol", found, expected, "Use a larger label or a smaller module, not below what the printer and the scanner resolve."));

    public static string Text(double value) => Math.Round(value, 1).ToString("0.0", CultureInfo.InvariantCulture);
}

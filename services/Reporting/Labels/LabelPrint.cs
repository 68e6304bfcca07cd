using System.Globalization;
using LabPipeline.Reporting.Printing;

namespace LabPipeline.Reporting.Labels;

/// <summary>Prints sheets of labels. One label that does not fit keeps all from being printed.</summary>
public static class LabelPrint
{
    /// <param name="sheet">The sheet.</param>
    /// <param name="labels">Row by row.</param>
    /// <param name="first">Place of the first label on the first sheet, from 1: sheets that were begun can be used up.</param>
    /// <param name="now">When the file is made.</param>
    /// <returns>The PDF, or every fault.</returns>
    /// <exception cref="PrintException">There is no font.</exception>
    public static (byte[]? Pdf, IReadOnlyList<LabelFault> Faults) Pdf(LabelSheet sheet, IReadOnlyList<LabelText> labels, int first, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(labels);
        var (pages, faults) = Pages(sheet, labels, first);
        return faults.Count == 0 ? (PdfPages.Of(pages, $"labels {labels[0].Trial}, {sheet.Name}", now), []) : (null, faults);
    }

    /// <summary>The same sheets as drawings to be put into a web page, a page each.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="labels">Row by row.</param>
    /// <param name="first">Place of the first label on the first sheet, from 1.</param>
    /// <returns>Markup without scripts and styles, every text encoded; or every fault.</returns>
    /// <exception cref="PrintException">There is no font to measure with.</exception>
    public static (IReadOnlyList<string> Drawings, IReadOnlyList<LabelFault> Faults) Drawings(LabelSheet sheet, IReadOnlyList<LabelText> labels, int first)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(labels);
        var (pages, faults) = Pages(sheet, labels, first);
        return faults.Count > 0
            ? ([], faults)
            : ([.. pages.Select((page, index) => SvgPage.Inside(page, string.Create(CultureInfo.InvariantCulture, $"{labels[0].Trial}, {sheet.Name}, {index + 1}/{pages.Count}")))], []);
    }

    internal static (IReadOnlyList<Page> Pages, IReadOnlyList<LabelFault> Faults) Pages(LabelSheet sheet, IReadOnlyList<LabelText> labels, int first)
    {
        if (FaultsOf(sheet, labels, first) is { Count: > 0 } broken)
        {
            return ([], broken);
        }

        var widths = new TextWidths();
        var faces = labels.Select(label => LabelFace.Of(sheet, label, widths)).ToList();
        var pages = faces.Select((face, index) => (Marks: face.Marks, Place: index + first - 1))
            .GroupBy(face => face.Place / sheet.LabelsPerPage, face => Placed(sheet, face.Marks, face.Place % sheet.LabelsPerPage))
            .Select(group => new Page(sheet.PageWidth, sheet.PageHeight, [.. group.SelectMany(marks => marks)]));
        return ([.. pages], [.. faces.SelectMany(face => face.Faults)]);
    }

    /// <summary>Upper left corner of a place, which counts from 0, row by row.</summary>
    internal static (double Left, double Top) CornerOf(LabelSheet sheet, int place) => (
        sheet.MarginLeft + (place % sheet.Columns * (sheet.LabelWidth + sheet.GapAcross)),
        sheet.MarginTop + (place / sheet.Columns * (sheet.LabelHeight + sheet.GapDown)));

    private static IReadOnlyList<LabelFault> FaultsOf(LabelSheet sheet, IReadOnlyList<LabelText> labels, int first)
    {
        if (labels.Count == 0)
        {
            return [new LabelFault("labels", "none", "at least one", "Name a pull that the plan holds.")];
        }

        var faults = LabelSheetChecks.Of(sheet);
        return faults.Count > 0 || (first >= 1 && first <= sheet.LabelsPerPage)
            ? faults
            : [new LabelFault("first place", $"{first}", $"1 to {sheet.LabelsPerPage}, the labels of a sheet", "Count places row by row.")];
    }

    private static IEnumerable<Mark> Placed(LabelSheet sheet, IReadOnlyList<Mark> marks, int place)
    {
        var (left, top) = CornerOf(sheet, place);
        return marks.Select(mark => (Mark)(mark switch
        {
            Mark.Fill box => box with { Left = box.Left + left, Top = box.Top + top },
            Mark.Frame box => box with { Left = box.Left + left, Top = box.Top + top },
            Mark.Words words => words with { Left = words.Left + left, Baseline = words.Baseline + top },
            _ => throw new ArgumentException($"Found a {mark.GetType().Name}; expected a fill, a frame or words.", nameof(marks)),
        }));
    }
}

using System.Globalization;

namespace LabPipeline.Reporting.Labels;

/// <summary>What can be wrong with a sheet's geometry.</summary>
internal static class LabelSheetChecks
{
    /// <summary>Two dots at 203 dpi, the coarsest printer in use. Common practice, no source.</summary>
    public const double SmallestBar = 0.25;

    /// <summary>Three dots at 203 dpi: squares are resolved in two directions. Common practice, no source.</summary>
    public const double SmallestSquare = 0.375;

    private const double LargestModule = 2;
    private const double Tolerance = 0.001;

    public static double SmallestModuleOf(LabelSymbol symbol) => symbol == LabelSymbol.Code128 ? SmallestBar : SmallestSquare;

    public static IReadOnlyList<LabelFault> Of(LabelSheet sheet) =>
    [
        .. OfNumbers(sheet),
        .. OfFit(sheet, "across", "pageWidth", sheet.PageWidth, sheet.MarginLeft, sheet.Columns, sheet.LabelWidth, sheet.GapAcross),
        .. OfFit(sheet, "down", "pageHeight", sheet.PageHeight, sheet.MarginTop, sheet.Rows, sheet.LabelHeight, sheet.GapDown),
    ];

    private static IEnumerable<LabelFault> OfNumbers(LabelSheet sheet)
    {
        (string Name, double Value, double Lowest, double Highest)[] numbers =
        [
            ("module", sheet.Module, SmallestModuleOf(sheet.Symbol), LargestModule),
            ("pageWidth", sheet.PageWidth, 20, 500),
            ("pageHeight", sheet.PageHeight, 10, 500),
            ("marginLeft", sheet.MarginLeft, 0, 200),
            ("marginTop", sheet.MarginTop, 0, 200),
            ("columns", sheet.Columns, 1, 50),
            ("rows", sheet.Rows, 1, 100),
            ("labelWidth", sheet.LabelWidth, 10, 500),
            ("labelHeight", sheet.LabelHeight, 5, 500),
            ("gapAcross", sheet.GapAcross, 0, 200),
            ("gapDown", sheet.GapDown, 0, 200),
            ("padding", sheet.Padding, 0, 20),
        ];
        return numbers.Where(number => !(number.Value >= number.Lowest && number.Value <= number.Highest)).Select(number => new LabelFault(
            $"sheet {sheet.Name}, {number.Name}", Text(number.Value), $"{Text(number.Lowest)} to {Text(number.Highest)}", "Correct the number; lengths are in millimetres."));
    }

    private static IEnumerable<LabelFault> OfFit(
        LabelSheet sheet, string way, string side, double page, double margin, int count, double label, double gap)
    {
        var needed = margin + (count * label) + ((count - 1) * gap);
        if (needed > page + Tolerance)
        {
            yield return new LabelFault(
                $"sheet {sheet.Name}, {side}",
                $"{Text(page)} mm",
                $"at least {Text(needed)} mm for {count} labels of {Text(label)} mm {way} with gaps of {Text(gap)} mm behind a margin of {Text(margin)} mm",
                "Measure the sheet again: the labels do not fit on the page.");
        }
    }

    private static string Text(double value) => Math.Round(value, 3).ToString(CultureInfo.InvariantCulture);
}

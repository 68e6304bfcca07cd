using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Tests.Text;

public sealed class NumberGrammarProperties
{
    private static readonly (NumberFormat Format, string Group)[] Spellings =
    [
        (NumberFormat.Point, ""),
        (NumberFormat.Comma, ""),
        (new NumberFormat('.', GroupMark.Comma), ","),
        (new NumberFormat(',', GroupMark.Point), "."),
        (new NumberFormat(',', GroupMark.Space), " "),
        (new NumberFormat('.', GroupMark.Space), "\u00A0"),
        (new NumberFormat(',', GroupMark.Space), "\u202F"),
        (new NumberFormat('.', GroupMark.Apostrophe), "'"),
    ];

    [Property(MaxTest = 2000)]
    public Property Parse_WhenDecimalWasFormatted_GivesItBack() => Prop.ForAll(
        Storable(),
        value => Spellings.All(spelling => GivesBack(value, spelling.Format, spelling.Group)));

    [Property(MaxTest = 5000)]
    public Property Parse_WhenTextIsLikeANumber_AgreesWithTheReference() => Prop.ForAll(
        NumberLikeTexts(),
        text => AllFormats().All(format => Agrees(text, format)));

    [Property(MaxTest = 1000)]
    [Shows(22)]
    public bool Parse_WhenTextIsAnything_AgreesWithTheReference(NonNull<string> text) =>
        AllFormats().All(format => Agrees(text.Get, format));

    [Property(MaxTest = 1000)]
    public Property Parse_WhenAccepted_IsKeptByADoubleAndByTwelveDecimals() => Prop.ForAll(
        NumberLikeTexts(),
        text => AllFormats().All(format => NumberGrammar.Parse(text, format, out var value) != NumberFault.None
            || ((decimal)(double)value == value && decimal.Round(value, 12) == value && Math.Abs(value) < 1_000_000_000_000_000m)));

    private static bool Agrees(string text, NumberFormat format)
    {
        var accepted = NumberGrammar.Parse(text, format, out var value) == NumberFault.None;
        return NumberReference.Parse(text, format) == (accepted ? value : null);
    }

    private static bool GivesBack(decimal value, NumberFormat format, string group)
    {
        var culture = new NumberFormatInfo
        {
            NumberDecimalSeparator = format.DecimalMark.ToString(),
            NumberGroupSeparator = group.Length > 0 ? group : "_",
            NegativeSign = "-",
        };
        var pattern = group.Length > 0 ? "#,0.############" : "0.############";
        var text = value.ToString(pattern, culture);
        return NumberGrammar.Parse(text, format, out var parsed) == NumberFault.None && parsed == value;
    }

    private static IEnumerable<NumberFormat> AllFormats() =>
        from mark in new[] { '.', ',' }
        from groupMark in Enum.GetValues<GroupMark>()
        where !(mark == '.' && groupMark == GroupMark.Point) && !(mark == ',' && groupMark == GroupMark.Comma)
        from exponent in new[] { false, true }
        select new NumberFormat(mark, groupMark, exponent);

    // Any decimal of at most 15 significant digits and 12 decimals.
    private static Arbitrary<decimal> Storable() => Arb.From(
        from digits in Gen.Choose(1, 15)
        from mantissa in Gen.Choose(0, int.MaxValue).SelectMany(high => Gen.Choose(0, int.MaxValue).Select(low => ((ulong)high << 31) | (uint)low))
        from scale in Gen.Choose(0, 12)
        from negative in Gen.Elements(true, false)
        let kept = mantissa % (ulong)Math.Pow(10, digits)
        select new decimal((int)(uint)kept, (int)(uint)(kept >> 32), 0, negative && kept != 0, (byte)scale));

    private static Arbitrary<string> NumberLikeTexts() => Arb.From(
        Gen.ListOf(Gen.Elements('0', '1', '2', '5', '9', '0', '3', '.', ',', ' ', '-', '+', 'E', 'e', '\'', '\u00A0', '7'))
            .Select(symbols => new string([.. symbols])));
}

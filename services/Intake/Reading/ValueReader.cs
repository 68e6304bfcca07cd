using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Text;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Reading;

/// <summary>Reads one value: missing, below the limit, or a number; in its canonical unit and within what is accepted.</summary>
internal sealed class ValueReader(Profile profile, IRowSource rows, MissingTexts missing)
{
    private readonly NumberFormat _numbers = profile.Text.Numbers;
    private readonly TextShelf _raw = new(FactText.LongestRawValue);
    private readonly TextPool _units = new();
    private string _lastUnit = "";

    /// <summary>Lets go of the texts of the row before.</summary>
    public void Clear() => _raw.Clear();

    /// <summary>Null when the value is accepted, or its absence is.</summary>
    public Fault? Read(BoundQuantity quantity, bool missingAllowed, out ParsedValue value)
    {
        var rule = quantity.Rule;
        value = new ParsedValue { MissingText = -1, Raw = default, Unit = rule.UnitText };
        var text = quantity.Value.Read(rows);
        var index = missing.Find(text);
        if (index >= 0)
        {
            return Missing(quantity, text, index, missingAllowed, ref value);
        }

        if (text.IsEmpty)
        {
            return FaultCatalogue.MissingCell(quantity.Value.Place(rows));
        }

        var number = text;
        var fault = FindUnit(quantity, ref number, ref value, out var unit);
        if (fault is not null)
        {
            return fault;
        }

        if (rule.BelowLimitMarker is { } marker && number.StartsWith(marker, StringComparison.Ordinal))
        {
            value.BelowLimit = true;
            number = CellText.Trim(number[marker.Length..]);
        }

        var numberFault = NumberGrammar.Parse(number, _numbers, out var written);
        if (numberFault != NumberFault.None)
        {
            return FaultCatalogue.Number(quantity.Value.Place(rows), text, numberFault, _numbers);
        }

        index = value.BelowLimit ? -1 : missing.Find(written);
        return index >= 0
            ? Missing(quantity, text, index, missingAllowed, ref value)
            : Accept(quantity, text, written, unit, ref value);
    }

    private Fault? Accept(BoundQuantity quantity, ReadOnlySpan<char> text, decimal written, Unit unit, ref ParsedValue value)
    {
        var rule = quantity.Rule;
        if (written <= 0m && (value.BelowLimit || PositiveQuantities.Contain(rule.Quantity)))
        {
            return FaultCatalogue.ValueNotPositive(
                quantity.Value.Place(rows), text, value.BelowLimit ? "a limit" : rule.Quantity.Name.Replace('_', ' '));
        }

        // A number as read always fits; only a conversion can lengthen it.
        var stored = unit == rule.Quantity.Unit ? written : StoredPrecision.Fit(UnitConversion.Convert(written, unit, rule.Quantity)!.Value);
        if (stored is null)
        {
            return FaultCatalogue.Number(quantity.Value.Place(rows), text, NumberFault.TooLarge, _numbers);
        }

        if (stored < rule.Lowest || stored > rule.Highest)
        {
            return FaultCatalogue.ValueOutsideLimits(quantity.Value.Place(rows), text, rule.Lowest, rule.Highest, rule.Quantity.Unit.Symbol);
        }

        if (text.Length > FactText.LongestRawValue)
        {
            return FaultCatalogue.CellTooLong(quantity.Value.Place(rows), text.Length, FactText.LongestRawValue);
        }

        value.Value = stored.Value;
        value.Raw = _raw.Keep(text);
        return null;
    }

    private Fault? Missing(BoundQuantity quantity, ReadOnlySpan<char> text, int index, bool allowed, ref ParsedValue value)
    {
        if (missing.IsRefused(index))
        {
            return FaultCatalogue.PlaceholderValue(quantity.Value.Place(rows), text);
        }

        value.MissingText = index;
        return allowed ? null : FaultCatalogue.MissingValue(quantity.Value.Place(rows), text);
    }

    private Fault? FindUnit(BoundQuantity quantity, ref ReadOnlySpan<char> number, ref ParsedValue value, out Unit unit)
    {
        var rule = quantity.Rule;
        unit = rule.Unit ?? Unit.One;
        if (rule.Unit is not null)
        {
            return null;
        }

        ReadOnlySpan<char> text;
        if (rule.UnitInCell)
        {
            // The blank before the unit: blanks inside the number are its own business.
            var blank = number.LastIndexOfAny(' ', '\t', '\u00A0');
            text = blank < 0 ? default : number[(blank + 1)..];
            number = blank < 0 ? number : number[..blank].TrimEnd(" \t\u00A0");
        }
        else
        {
            text = rows.Cell(quantity.UnitColumn);
        }

        value.Unit = _units.Get(text, ref _lastUnit);
        if (UnitConversion.Find(value.Unit) is { } found && UnitConversion.CanConvert(found, rule.Quantity))
        {
            unit = found;
            return null;
        }

        var place = rule.UnitInCell ? quantity.Value.Place(rows) : rows.PlaceOf(quantity.UnitColumn);
        return FaultCatalogue.UnknownUnit(place, text, rule.Quantity.Name, rule.Quantity.Unit.Symbol);
    }
}

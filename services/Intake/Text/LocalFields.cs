using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;

namespace LabPipeline.Intake.Text;

/// <summary>The fields of a written date and time, before they are checked against the calendar and a zone.</summary>
internal struct LocalFields
{
    private const int LargestOffset = 14 * 60;

    private FieldValues _values;

    /// <summary>Whether the text states the minutes east of UTC.</summary>
    public bool HasOffset;

    public readonly int OffsetMinutes => _values[(int)PatternField.Offset];

    /// <summary>The value of a field; that of the fraction counts units of 100 ns.</summary>
    [UnscopedRef]
    public ref int Of(PatternField field) => ref _values[(int)field];

    public readonly bool TryGetLocal(out DateTime local)
    {
        local = default;
        var (year, month, day) = (_values[(int)PatternField.Year], _values[(int)PatternField.Month], _values[(int)PatternField.Day]);
        var (hour, minute, second) = (_values[(int)PatternField.Hour], _values[(int)PatternField.Minute], _values[(int)PatternField.Second]);
        if (year is < 1900 or > 2199 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month)
            || hour > 23 || minute > 59 || second > 59 || OffsetMinutes is < -LargestOffset or > LargestOffset)
        {
            return false;
        }

        var time = (((((hour * 60) + minute) * 60) + second) * TimeSpan.TicksPerSecond) + _values[(int)PatternField.Fraction];
        local = new DateTime(new DateTime(year, month, day, 0, 0, 0, DateTimeKind.Unspecified).Ticks + time, DateTimeKind.Unspecified);
        return true;
    }

    [InlineArray((int)PatternField.Offset + 1)]
    private struct FieldValues
    {
        private int _first;
    }
}

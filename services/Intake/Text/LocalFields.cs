namespace LabPipeline.Intake.Text;

/// <summary>The fields of a written date and time, before they are checked against the calendar and a zone.</summary>
internal struct LocalFields
{
    public int Year;
    public int Month;
    public int Day;
    public int Hour;
    public int Minute;
    public int Second;

    /// <summary>Fraction of the second in units of 100 ns.</summary>
    public int Ticks;

    /// <summary>Minutes east of UTC where the text states them.</summary>
    public int? OffsetMinutes;

    public readonly bool TryGetLocal(out DateTime local)
    {
        local = default;
        if (Year is < 1900 or > 2199 || Month is < 1 or > 12 || Day < 1 || Day > DateTime.DaysInMonth(Year, Month)
            || Hour > 23 || Minute > 59 || Second > 59 || OffsetMinutes is < -14 * 60 or > 14 * 60)
        {
            return false;
        }

        local = new DateTime(Year, Month, Day, Hour, Minute, Second, DateTimeKind.Unspecified).AddTicks(Ticks);
        return true;
    }
}

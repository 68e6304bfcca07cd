namespace LabPipeline.Intake.Text;

/// <summary>How one source writes numbers; declared by its profile, never detected.</summary>
/// <param name="DecimalMark">Point or comma.</param>
/// <param name="Group">What groups digits by three; must differ from the decimal mark.</param>
/// <param name="AllowExponent">Whether "1.2E-3" is a number here.</param>
public sealed record NumberFormat(char DecimalMark = '.', GroupMark Group = GroupMark.None, bool AllowExponent = false)
{
    /// <summary>Decimal point, no groups, no exponent.</summary>
    public static readonly NumberFormat Point = new();

    /// <summary>Decimal comma, no groups, no exponent.</summary>
    public static readonly NumberFormat Comma = new(',');

    internal bool IsGroupMark(char symbol) => Group switch
    {
        GroupMark.None => false,
        GroupMark.Point => symbol == '.',
        GroupMark.Comma => symbol == ',',
        GroupMark.Space => symbol is ' ' or '\u00A0' or '\u202F',
        _ => symbol is '\'' or '\u2019',
    };
}

using System.Globalization;
using System.Text;

namespace LabPipeline.Station.Demo;

/// <summary>Lines of a file, with numbers and times as its instrument writes them.</summary>
internal sealed class DemoText(string lineEnd)
{
    private readonly StringBuilder _text = new();

    public static string Number(double value, int decimals) =>
        Math.Round((decimal)value, decimals, MidpointRounding.ToEven).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    public static string Count(int value) => value.ToString(CultureInfo.InvariantCulture);

    public static string Time(DateTime time, string format) => time.ToString(format, CultureInfo.InvariantCulture);

    public DemoText Line(string line)
    {
        _text.Append(line).Append(lineEnd);
        return this;
    }

    public DemoText Cells(char delimiter, params string[] cells) => Line(string.Join(delimiter, cells));

    public override string ToString() => _text.ToString();

    public byte[] Bytes(Encoding encoding) => [.. encoding.GetPreamble(), .. encoding.GetBytes(_text.ToString())];
}

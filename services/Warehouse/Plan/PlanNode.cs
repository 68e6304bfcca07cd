using System.Globalization;
using System.Text.Json;

namespace LabPipeline.Warehouse.Plan;

/// <summary>An object of a plan document that notes what is wrong with its members and goes on, so that all faults are told at once.</summary>
/// <remarks>A member that is wrong or missing is noted and read as an empty text, a zero or the first day; later checks pass over those.</remarks>
internal sealed class PlanNode
{
    private readonly Dictionary<string, JsonElement> _members = new(StringComparer.Ordinal);
    private readonly HashSet<string> _read = new(StringComparer.Ordinal);
    private readonly List<PlanFault> _faults;
    private readonly bool _isObject;

    public PlanNode(JsonElement element, string path, List<PlanFault> faults)
    {
        Path = path;
        _faults = faults;
        _isObject = element.ValueKind == JsonValueKind.Object;
        if (_isObject)
        {
            ReadMembers(element);
        }
        else if (element.ValueKind != JsonValueKind.Undefined)
        {
            Note(path, Shown(element), "an object { … }", "Write it as the specification shows.");
        }
    }

    public string Path { get; }

    public bool Has(string name) => _members.TryGetValue(name, out var element) && element.ValueKind != JsonValueKind.Null;

    public PlanNode Child(string name) => new(Take(name, "an object { … }"), PathOf(name), _faults);

    public IReadOnlyList<PlanNode> Each(string name)
    {
        var items = Items(name);
        return [.. items.Select((item, index) => new PlanNode(item, $"{PathOf(name)}[{index}]", _faults))];
    }

    public IReadOnlyList<PlanNode> EachIfAny(string name)
    {
        _read.Add(name);
        return Has(name) ? Each(name) : [];
    }

    /// <summary>A list of different texts.</summary>
    public IReadOnlyList<string> Texts(string name, int longest)
    {
        var texts = Items(name).Select((item, index) => Checked(item, $"{PathOf(name)}[{index}]", longest)).ToList();
        foreach (var twice in texts.Where(text => text.Length > 0).GroupBy(text => text, StringComparer.OrdinalIgnoreCase).Where(group => group.Count() > 1))
        {
            Note(PathOf(name), $"'{twice.Key}' {twice.Count()} times", "each entry once, capital and small letters counting as the same", "Remove or rename one.");
        }

        return [.. texts.Distinct(StringComparer.Ordinal)];
    }

    public IReadOnlyList<int>? WholesIfAny(string name)
    {
        _read.Add(name);
        return Has(name)
            ? [.. Items(name).Select((item, index) => WholeOf(item, $"{PathOf(name)}[{index}]", 1, PlanSamples.HighestPull))]
            : null;
    }

    public string Text(string name, int longest)
    {
        var element = Take(name, "a text");
        return element.ValueKind == JsonValueKind.Undefined ? "" : Checked(element, PathOf(name), longest);
    }

    public string? TextIfAny(string name, int longest)
    {
        _read.Add(name);
        return Has(name) ? Text(name, longest) : null;
    }

    public IReadOnlyDictionary<string, string> Map(string name, int longest)
    {
        var node = Child(name);
        node._read.UnionWith(node._members.Keys);
        return node._members.ToDictionary(member => member.Key, member => Checked(member.Value, node.PathOf(member.Key), longest), StringComparer.Ordinal);
    }

    /// <summary>An object of numbers.</summary>
    public IReadOnlyDictionary<string, decimal> Numbers(string name, decimal lowest, decimal highest)
    {
        var node = Child(name);
        return node._members.Keys.ToDictionary(member => member, member => node.Number(member, lowest, highest), StringComparer.Ordinal);
    }

    public int Whole(string name, int lowest, int highest)
    {
        var element = Take(name, WholeExpected(lowest, highest));
        return element.ValueKind == JsonValueKind.Undefined ? 0 : WholeOf(element, PathOf(name), lowest, highest);
    }

    public decimal Number(string name, decimal lowest, decimal highest)
    {
        var expected = $"a number from {Invariant(lowest)} to {Invariant(highest)}";
        var element = Take(name, expected);
        if (element.ValueKind == JsonValueKind.Undefined)
        {
            return 0;
        }

        if (element.ValueKind == JsonValueKind.Number && element.TryGetDecimal(out var value) && value >= lowest && value <= highest)
        {
            return value;
        }

        Note(PathOf(name), Shown(element), expected, "Correct the value; numbers stand without quotes.");
        return 0;
    }

    public decimal? NumberIfAny(string name, decimal lowest, decimal highest)
    {
        _read.Add(name);
        return Has(name) ? Number(name, lowest, highest) : null;
    }

    public DateOnly Date(string name)
    {
        var element = Take(name, "a date such as \"2025-10-06\"");
        if (element.ValueKind == JsonValueKind.Undefined)
        {
            return default;
        }

        if (element.ValueKind == JsonValueKind.String
            && DateOnly.TryParseExact(element.GetString(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
        {
            return date;
        }

        Note(PathOf(name), Shown(element), "a date such as \"2025-10-06\"", "Write year-month-day.");
        return default;
    }

    /// <summary>Notes every member that nothing asked for.</summary>
    public void RefuseRest()
    {
        foreach (var name in _members.Keys.Where(name => !_read.Contains(name)))
        {
            Note(PathOf(name), "a member nobody knows", $"only {string.Join(", ", _read.Order(StringComparer.Ordinal))}", "Remove it or correct its spelling.");
        }
    }

    public void NoteAt(string name, string found, string expected, string advice) => Note(PathOf(name), found, expected, advice);

    private static string WholeExpected(int lowest, int highest) =>
        string.Create(CultureInfo.InvariantCulture, $"a whole number from {lowest} to {highest}");

    private static string Invariant(decimal value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Shown(JsonElement element)
    {
        var text = element.GetRawText();
        return text.Length <= 40 ? text : text[..40] + "…";
    }

    private void ReadMembers(JsonElement element)
    {
        foreach (var member in element.EnumerateObject())
        {
            if (!_members.TryAdd(member.Name, member.Value))
            {
                Note(PathOf(member.Name), "the member twice", "it once", "Remove one of them.");
            }
        }
    }

    private JsonElement[] Items(string name)
    {
        var element = Take(name, "a list [ … ]");
        if (element.ValueKind == JsonValueKind.Array && element.GetArrayLength() > 0)
        {
            return [.. element.EnumerateArray()];
        }

        if (element.ValueKind != JsonValueKind.Undefined)
        {
            Note(PathOf(name), Shown(element), "a list with at least one entry", "Write it as the specification shows.");
        }

        return [];
    }

    private JsonElement Take(string name, string expected)
    {
        _read.Add(name);
        if (Has(name))
        {
            return _members[name];
        }

        // An object that is itself missing was told of already.
        if (_isObject)
        {
            Note(PathOf(name), "nothing", expected, "Add it.");
        }

        return default;
    }

    private string Checked(JsonElement element, string path, int longest)
    {
        var text = element.ValueKind == JsonValueKind.String ? element.GetString()! : "";
        if (text.Length > 0 && text.Length <= longest && text.Trim().Length == text.Length && !text.Any(char.IsControl))
        {
            return text;
        }

        Note(path, Shown(element), $"a text of 1 to {longest.ToString(CultureInfo.InvariantCulture)} characters without blanks around it or line breaks", "Correct the text.");
        return "";
    }

    private int WholeOf(JsonElement element, string path, int lowest, int highest)
    {
        if (element.ValueKind == JsonValueKind.Number && element.TryGetInt32(out var value) && value >= lowest && value <= highest)
        {
            return value;
        }

        Note(path, Shown(element), WholeExpected(lowest, highest), "Correct the number; numbers stand without quotes.");
        return 0;
    }

    private string PathOf(string name) => Path.Length == 0 ? name : $"{Path}.{name}";

    private void Note(string path, string found, string expected, string advice) =>
        _faults.Add(new PlanFault(path.Length == 0 ? "document" : path, found, expected, advice));
}

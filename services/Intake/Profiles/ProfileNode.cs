using System.Text.Json;
using LabPipeline.Hosting;
using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Profiles;

/// <summary>One object of a profile document. Reads its members by name, notes every fault with its path, and in the end every member nobody asked for.</summary>
/// <remarks>After a fault a harmless stand-in is returned: the walk goes on so that all faults are found at once, and no profile is made.</remarks>
internal sealed class ProfileNode
{
    // The stand-in for a missing object; faults inside it would only repeat that it is missing.
    private static readonly JsonElement EmptyObject = JsonDocument.Parse("{}").RootElement;

    private readonly Dictionary<string, JsonElement> _members = new(StringComparer.Ordinal);
    private readonly List<string> _asked = [];
    private readonly List<ProfileFault> _faults;
    private readonly string _path;

    public ProfileNode(JsonElement element, string path, List<ProfileFault> faults)
    {
        _path = path;
        _faults = element.ValueKind == JsonValueKind.Object ? faults : [];
        if (element.ValueKind != JsonValueKind.Object)
        {
            // What is missing inside would only repeat that the object is.
            faults.Add(new ProfileFault(path.Length == 0 ? "the document" : path, Shown(element), "an object"));
            return;
        }

        IsObject = true;
        foreach (var member in element.EnumerateObject())
        {
            if (!_members.TryAdd(member.Name, member.Value))
            {
                Fault(member.Name, "it twice", "every member once");
            }
        }
    }

    public bool IsObject { get; }

    public IReadOnlyCollection<string> Names => _members.Keys;

    public bool Has(string name) => _members.ContainsKey(name);

    public string PathOf(string name) => _path.Length == 0 ? name : $"{_path}.{name}";

    public void Fault(string name, string found, string expected) => _faults.Add(new ProfileFault(PathOf(name), found, expected));

    public void FaultHere(string found, string expected) => _faults.Add(new ProfileFault(_path, found, expected));

    public string Text(string name) => OptionalText(name) ?? Missing(name, "a text", "");

    public string? OptionalText(string name)
    {
        if (!Ask(name, out var element))
        {
            return null;
        }

        if (element.ValueKind == JsonValueKind.String && element.GetString() is { Length: > 0 } text)
        {
            return text;
        }

        Fault(name, Shown(element), "a text that is not empty");
        return "";
    }

    /// <summary>A text that may be empty, or null when the member is absent.</summary>
    public string? AnyText(string name)
    {
        if (!Ask(name, out var element))
        {
            return null;
        }

        if (element.ValueKind != JsonValueKind.String)
        {
            Fault(name, Shown(element), "a text");
        }

        return element.ValueKind == JsonValueKind.String ? element.GetString() : "";
    }

    public int Whole(string name, int lowest, int highest, int? standard = null)
    {
        if (!Ask(name, out var element))
        {
            return standard ?? Missing(name, $"a whole number from {lowest} to {highest}", lowest);
        }

        if (element.ValueKind == JsonValueKind.Number && element.TryGetInt32(out var number) && number >= lowest && number <= highest)
        {
            return number;
        }

        Fault(name, Shown(element), $"a whole number from {lowest} to {highest}");
        return lowest;
    }

    public decimal? Number(string name)
    {
        if (!Ask(name, out var element))
        {
            return null;
        }

        if (element.ValueKind == JsonValueKind.Number && element.TryGetDecimal(out var number) && StoredPrecision.Fit(number) == number)
        {
            return number;
        }

        Fault(name, Shown(element), "a number of at most 15 digits and 12 decimals");
        return null;
    }

    public bool Flag(string name, bool standard)
    {
        if (!Ask(name, out var element))
        {
            return standard;
        }

        if (element.ValueKind is not (JsonValueKind.True or JsonValueKind.False))
        {
            Fault(name, Shown(element), "true or false");
        }

        return element.ValueKind == JsonValueKind.True;
    }

    public T Choice<T>(string name, IReadOnlyDictionary<string, T> choices, T? standard = null)
        where T : struct
    {
        if (!Ask(name, out var element))
        {
            return standard ?? Missing(name, $"one of {string.Join(", ", choices.Keys)}", default(T));
        }

        if (element.ValueKind == JsonValueKind.String && choices.TryGetValue(element.GetString()!, out var choice))
        {
            return choice;
        }

        Fault(name, Shown(element), $"one of {string.Join(", ", choices.Keys)}");
        return default;
    }

    /// <summary>A list of texts, each once; empty when the member is absent.</summary>
    public IReadOnlyList<string> Texts(string name, bool required = false, bool emptyAllowed = false)
    {
        var texts = new List<string>();
        var index = 0;
        foreach (var element in Elements(name, required, "a list of texts"))
        {
            var text = element.ValueKind == JsonValueKind.String ? element.GetString()! : null;
            if (text is null || (text.Length == 0 && !emptyAllowed))
            {
                Fault($"{name}[{index}]", Shown(element), emptyAllowed ? "a text" : "a text that is not empty");
            }
            else if (texts.Contains(text, StringComparer.Ordinal))
            {
                Fault($"{name}[{index}]", $"'{VisibleText.Of(text)}' again", "every text once");
            }
            else
            {
                texts.Add(text);
            }

            index++;
        }

        return texts;
    }

    public ProfileNode Child(string name) =>
        OptionalChild(name) ?? Missing(name, "an object", new ProfileNode(EmptyObject, PathOf(name), []));

    public ProfileNode? OptionalChild(string name) => Ask(name, out var element) ? new ProfileNode(element, PathOf(name), _faults) : null;

    public IReadOnlyList<ProfileNode> Children(string name) =>
        [.. Elements(name, false, "a list of objects").Select((element, index) => new ProfileNode(element, $"{PathOf(name)}[{index}]", _faults))];

    /// <summary>Says which members are not part of the schema. To be called when all others were asked for.</summary>
    public void Close()
    {
        foreach (var name in _members.Keys.Except(_asked, StringComparer.Ordinal))
        {
            Fault(name, "a member that has no meaning here", $"only {string.Join(", ", _asked)}");
        }
    }

    private static string Shown(JsonElement element) =>
        element.ValueKind == JsonValueKind.String ? $"'{VisibleText.Of(element.GetString())}'" : VisibleText.Of(element.GetRawText());

    private IEnumerable<JsonElement> Elements(string name, bool required, string expected)
    {
        if (!Ask(name, out var element))
        {
            return required ? Missing(name, expected, Array.Empty<JsonElement>()) : [];
        }

        if (element.ValueKind == JsonValueKind.Array && (!required || element.GetArrayLength() > 0))
        {
            return element.EnumerateArray();
        }

        Fault(name, Shown(element), expected + (required ? " that is not empty" : ""));
        return [];
    }

    private bool Ask(string name, out JsonElement element)
    {
        _asked.Add(name);
        return _members.TryGetValue(name, out element);
    }

    private T Missing<T>(string name, string expected, T standIn)
    {
        Fault(name, "nothing", expected);
        return standIn;
    }
}

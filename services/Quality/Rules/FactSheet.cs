using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace LabPipeline.Quality.Rules;

/// <summary>What a finding saw and compared, as named texts in reading order. Two sheets with the same text are the same evidence.</summary>
public sealed class FactSheet
{
    // Written for a column and read by people; every page that shows it encodes for itself.
    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly List<KeyValuePair<string, string>> _facts = [];

    public IReadOnlyList<KeyValuePair<string, string>> Facts => _facts;

    /// <summary>Adds a fact. The same fact twice is one; another value under a name that is taken gets a number.</summary>
    public FactSheet Add(string name, string value)
    {
        var free = name;
        for (var number = 2; _facts.Exists(fact => fact.Key == free); number++)
        {
            if (_facts.Exists(fact => fact.Key == free && fact.Value == value))
            {
                return this;
            }

            free = NumberText.Invariant($"{name} ({number})");
        }

        _facts.Add(new(free, value));
        return this;
    }

    /// <summary>Adds a number with every digit that counts: a difference in the last one is a difference in the evidence.</summary>
    public FactSheet Add(string name, decimal value) => Add(name, value.ToString("0.############", CultureInfo.InvariantCulture));

    public FactSheet Add(string name, int value) => Add(name, value.ToString(CultureInfo.InvariantCulture));

    public FactSheet Add(string name, DateOnly value) => Add(name, value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));

    public string ToJson()
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, Plain))
        {
            writer.WriteStartObject();
            foreach (var (name, value) in _facts)
            {
                writer.WriteString(name, value);
            }

            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }
}

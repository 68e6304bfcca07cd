using System.Globalization;
using System.Text.Json;
using LabPipeline.Intake.Reading;

namespace LabPipeline.Intake.Profiles;

/// <summary>Reads profile documents (docs/specs/intake-profile.md).</summary>
public static class ProfileDocument
{
    /// <summary>The only document schema there is so far.</summary>
    public const int Schema = 1;

    private const int LatestVersion = 1_000_000;

    private static readonly JsonDocumentOptions Strict = new() { CommentHandling = JsonCommentHandling.Skip, MaxDepth = 16 };

    /// <summary>The profile that <paramref name="json"/> describes, or every fault in it; <paramref name="name"/> is shown in their descriptions.</summary>
    public static ProfileResult Parse(string json, string name)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(name);
        var faults = new List<ProfileFault>();
        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(json, Strict);
        }
        catch (JsonException exception)
        {
            var place = string.Create(CultureInfo.InvariantCulture, $"line {(exception.LineNumber ?? 0) + 1}, byte {(exception.BytePositionInLine ?? 0) + 1}");
            return new ProfileResult(name, null, [new ProfileFault(place, "text that is not JSON", "a JSON document; only comments may be added")]);
        }

        using (document)
        {
            var profile = Read(json, new ProfileNode(document.RootElement, "", faults), faults);
            return new ProfileResult(name, faults.Count == 0 ? profile : null, faults);
        }
    }

    private static Profile Read(string json, ProfileNode root, List<ProfileFault> faults)
    {
        root.Whole("schema", Schema, Schema);
        var name = root.Text("name");
        var version = root.Whole("version", 1, LatestVersion);
        var kind = root.Choice("kind", ProfileWords.Kinds);
        var subject = root.Choice("subject", ProfileWords.Subjects, ReadingSubject.Sample);
        var identity = IdentitySection.Read(root, subject);
        var method = MethodSection.Read(root.Child("method"));
        var text = TextSection.Read(root.Child("text"));
        var quantities = new QuantitySection(kind, text.Numbers);
        var missingTexts = root.Texts("missingTexts", emptyAllowed: true);
        var oneValueRows = root.OptionalChild("oneValueRows");
        var profile = new Profile
        {
            Name = name,
            Document = json,
            Version = version,
            Kind = kind,
            Subject = subject,
            Identity = identity,
            Method = method,
            Text = text,
            Files = FileSection.Read(root.Child("files"), text.Layout),
            Time = root.OptionalChild("time") is { } time ? TimeSection.Read(time) : null,
            RowKey = root.Texts("rowKey"),
            Quantities = quantities.ReadColumns(root),
            OneValueRows = oneValueRows is null ? null : quantities.ReadOneValueRows(oneValueRows),
            MissingTexts = missingTexts,
            Placeholders = RowSection.ReadPlaceholders(root, missingTexts),
            Controls = RowSection.ReadRules(root, "controls", "material"),
            FryBatches = RowSection.ReadRules(root, "fryBatches", "batch"),
            IgnoredColumns = root.Texts("ignoredColumns"),
            UnknownColumns = root.Choice("unknownColumns", ProfileWords.UnknownColumns, UnknownColumns.Refuse),
            BadRows = root.Choice("badRows", ProfileWords.BadRows, BadRows.RefuseFile),
        };
        root.Close();
        if (root.IsObject)
        {
            faults.AddRange(ProfileChecks.Find(profile));
        }

        return profile;
    }
}

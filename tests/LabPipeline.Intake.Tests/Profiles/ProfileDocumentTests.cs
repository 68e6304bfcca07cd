using System.Text.Json.Nodes;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;
using LabPipeline.Intake.Tests.Reading;
using LabPipeline.Intake.Text;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Intake.Tests.Profiles;

/// <summary>The schema of docs/specs/intake-profile.md.</summary>
public sealed class ProfileDocumentTests
{
    [Fact]
    public void Parse_WhenDocumentIsGood_GivesTheProfile()
    {
        var profile = SampleProfiles.Sugar();

        Assert.Equal(("bench-sugars", 3, QuantityKind.Sugar), (profile.Name, profile.Version, profile.Kind));
        Assert.Equal("America/Chicago", profile.Time!.Zone.Id);
        Assert.Equal(new Placeholder("9999", true), profile.Placeholders[0]);
        Assert.Equal(new RowRule(new RowCondition("Sample", "QC", true), new CellSource("Sample", null)), Assert.Single(profile.Controls));
        Assert.Equal(
            new QuantityRule(QuantityCatalogue.GlucoseInExtract, new CellSource("Glucose", null), Unit.GramPerLitre, "g/L", null, false, "<", -1m, 10m, true),
            Assert.Single(profile.Quantities));
    }

    [Fact]
    public void Parse_WhenMembersAreLeftOut_TakesTheStrictSide()
    {
        var profile = SampleProfiles.Balance();

        Assert.Equal((BadRows.RefuseFile, UnknownColumns.Refuse, ReadingSubject.Sample), (profile.BadRows, profile.UnknownColumns, profile.Subject));
        Assert.Equal(new NumberFormat('.', GroupMark.None, AllowExponent: false), profile.Text.Numbers);
        Assert.Equal(AmbiguousTime.Refuse, SampleProfiles.Sugar().Time!.Ambiguous);
        Assert.Empty(profile.MissingTexts);
        Assert.False(profile.Quantities[0].MissingAllowed);
    }

    [Fact]
    public void Parse_WhenDocumentHoldsComments_PassesThemOver() =>
        Assert.True(ProfileDocument.Parse("// made for the cold bench\n" + SampleProfiles.SugarJson.Replace("\"kind\"", "/* what */ \"kind\"", StringComparison.Ordinal), "p").IsValid);

    [Theory]
    [InlineData("{ \"schema\": 1, }", "p.json, line 1, byte 16: found text that is not JSON; expected a JSON document; only comments may be added.")]
    [InlineData("", "p.json, line 1, byte 1: found text that is not JSON; expected a JSON document; only comments may be added.")]
    public void Parse_WhenTextIsNotJson_SaysWhere(string json, string expected) =>
        Assert.Equal([expected], ProfileDocument.Parse(json, "p.json").Describe());

    [Fact]
    public void Parse_WhenRootIsNoObject_SaysSo() =>
        Assert.Equal(["p.json, the document: found []; expected an object."], ProfileDocument.Parse("[]", "p.json").Describe());

    [Fact]
    public void Parse_WhenMemberStandsTwice_Refuses() => Assert.Equal(
        ["p.json, version: found it twice; expected every member once."],
        ProfileDocument.Parse(SampleProfiles.SugarJson.Replace("\"version\": 3", "\"version\": 3, \"version\": 4", StringComparison.Ordinal), "p.json").Describe());

    public static TheoryData<string, string, string> SugarFaults => new()
    {
        { "schema", "2", "schema: found 2; expected a whole number from 1 to 1." },
        { "version", "0", "version: found 0; expected a whole number from 1 to 1000000." },
        { "version", "\"3\"", "version: found '3'; expected a whole number from 1 to 1000000." },
        { "version", "1.5", "version: found 1.5; expected a whole number from 1 to 1000000." },
        { "name", "\"\"", "name: found ''; expected a text that is not empty." },
        { "kind", "\"colour\"", "quantities[0].quantity: found 'glucose_in_extract'; expected one of hunter_l, hunter_a, hunter_b, cielab_l, cielab_a, cielab_b." },
        { "kind", "\"Sugar\"", "kind: found 'Sugar'; expected one of sugar, balance, colour, bench." },
        { "colour", "true", "colour: found a member that has no meaning here; expected only schema, name, version, kind, subject, identity, instrument, method, text, missingTexts, oneValueRows, files, time, rowKey, quantities, placeholders, controls, fryBatches, ignoredColumns, unknownColumns, badRows." },
        { "instrument", "{}", "instrument: found nothing; expected column or constant." },
        { "instrument", "{\"column\":\"A\",\"constant\":\"B\"}", "instrument: found both column and constant; expected column or constant." },
        { "instrument", "\"SUG-1\"", "instrument: found 'SUG-1'; expected an object." },
        { "method.version", "2", "method.version: found 2; expected a text that is not empty." },
        { "method.facts", "{\"inversion\": 1}", "method.facts.inversion: found 1; expected a text that is not empty." },
        { "method.limitsOfQuantitation", "{\"glucose_in_extract\": {\"value\": 0, \"unit\": \"g/L\"}}", "method.limitsOfQuantitation.glucose_in_extract.value: found 0 or less; expected a number above 0." },
        { "method.limitsOfQuantitation", "{\"glucose_in_extract\": {\"value\": 5, \"unit\": \"g\"}}", "method.limitsOfQuantitation.glucose_in_extract.unit: found 'g'; expected a unit of glucose_in_extract such as g/L." },
        { "method.limitsOfQuantitation", "{\"gluten\": {\"value\": 5, \"unit\": \"g\"}}", "method.limitsOfQuantitation.gluten: found a limit of it; expected the name of a quantity." },
        { "files.match", "[]", "files.match: found []; expected a list of texts that is not empty." },
        { "files.match", "[\"in/*.csv\"]", "files.match[0]: found 'in/*.csv'; expected a file name without folder; * and ? stand for any characters and one." },
        { "files.complete", "\"quiet\"", "files.complete: found 'quiet'; expected one of renamed-in, done-file, final-newline, trailer." },
        { "files.quietSeconds", "0", "files.quietSeconds: found 0; expected a whole number from 1 to 86400." },
        { "files.trailer", "\"END\"", "files.trailer: found a member that has no meaning here; expected only match, complete, quietSeconds." },
        { "text.encoding", "\"latin-1\"", "text.encoding: found 'latin-1'; expected one of utf-8, utf-16, utf-16le, utf-16be, iso-8859-1, windows-1252." },
        { "text.delimiter", "\"::\"", "text.delimiter: found '::'; expected one character." },
        { "text.delimiter", "\"-\"", "text.delimiter: found '-'; expected a mark that cannot be part of a number and is not the quote." },
        { "text.delimiter", "\"\\\"\"", "text.delimiter: found '\"'; expected a mark that cannot be part of a number and is not the quote." },
        { "text.decimalMark", "\",\"", "text.decimalMark: found ','; expected one of point, comma." },
        { "text.groupMark", "\"point\"", "text.groupMark: found the decimal mark; expected another mark than the decimal mark." },
        { "text.headerLine", "0", "text.headerLine: found 0; expected a whole number from 1 to 10000." },
        { "text.columns", "[\"Sample\"]", "text.headerLine: found it together with columns; expected either headerLine, or columns for a file without one.|text.columns: found no 'Run'; expected every column the profile reads.|text.columns: found no 'Operator'; expected every column the profile reads.|text.columns: found no 'Extract'; expected every column the profile reads.|text.columns: found no 'Replicate'; expected every column the profile reads.|text.columns: found no 'Time'; expected every column the profile reads.|text.columns: found no 'Glucose'; expected every column the profile reads." },
        { "text.fields", "[]", "text.fields: found a member that has no meaning here; expected only layout, encoding, decimalMark, groupMark, exponent, commentPrefix, delimiter, quote, headerLine, columns, skipLines." },
        { "time.zone", "\"Central\"", "time.zone: found 'Central'; expected a time zone name such as Europe/Berlin or America/Chicago." },
        { "time.formats", "[\"yy-MM-dd HH:mm\"]", "time.formats[0]: found 'yy-MM-dd HH:mm': 'yy-M' at position 1 is no part of a pattern; expected a format such as yyyy-MM-dd HH:mm:ss." },
        { "time.columns", "\"Time\"", "time.columns: found 'Time'; expected a list of texts that is not empty." },
        { "time.ambiguous", "\"guess\"", "time.ambiguous: found 'guess'; expected one of refuse, earlier, later." },
        { "identity.barcode", "{\"constant\": \"S26P01T03R2C\"}", "identity.barcode.column: found nothing; expected a text.|identity.barcode.constant: found a member that has no meaning here; expected only column." },
        { "identity.extract", "{\"column\": \"Replicate\"}", "identity.replicate.column: found 'Replicate', which is already extract; expected a column of its own." },
        { "identity.slice", "{\"constant\": \"A\"}", "identity.slice.constant: found 'A'; expected a whole number from 0 to 9999." },
        { "identity.run", "{\"column\": \"Run\", \"required\": false}", "identity.run.required: found a member that has no meaning here; expected only column, constant." },
        { "quantities", "[]", "quantities: found nothing; expected at least one quantity, or oneValueRows." },
        { "quantities.0.unit", "\"g\"", "quantities[0].unit: found 'g'; expected a unit of glucose_in_extract: g/L, g/l, mg/dL, mg/dl, mmol/L, mmol/l, mM." },
        { "quantities.0.unit", "\"gr/L\"", "quantities[0].unit: found 'gr/L'; expected a unit of glucose_in_extract: g/L, g/l, mg/dL, mg/dl, mmol/L, mmol/l, mM." },
        { "quantities.0.unitColumn", "\"Unit\"", "quantities[0].unit: found more than one place for the unit; expected one of unit, unitColumn and unitInCell." },
        { "quantities.0.quantity", "\"glucose\"", "quantities[0].quantity: found 'glucose'; expected one of glucose_in_extract, total_glucose_in_extract, sucrose_in_extract, extract_fresh_mass, extract_volume, solvent_volume, dilution_factor.|quantities[0].unit: found 'g/L'; expected a unit of glucose: mg/g." },
        { "quantities.0.min", "11", "quantities[0].min: found more than max; expected at most max." },
        { "quantities.0.min", "1e-15", "quantities[0].min: found 1e-15; expected a number of at most 15 digits and 12 decimals." },
        { "quantities.0.belowLimit", "\"-\"", "quantities[0].belowLimit: found '-'; expected a mark that cannot begin a number, such as <." },
        { "quantities.0.constant", "\"5\"", "quantities[0]: found both column and constant; expected column or constant." },
        { "quantities.0.missing", "true", "quantities[0].missing: found true; expected one of refuse, allow." },
        { "missingTexts", "[\"ND\", \"ND\"]", "missingTexts[1]: found 'ND' again; expected every text once." },
        { "placeholders", "[{\"text\": \"ND\", \"as\": \"missing\"}]", "placeholders[0].text: found 'ND' again; expected a text that is declared once." },
        { "controls.0.when", "{\"column\": \"Sample\"}", "controls[0].when: found nothing; expected equals or startsWith." },
        { "subject", "\"control\"", "identity.material: found nothing; expected an object.|identity.barcode: found a member that has no meaning here; expected only run, material, operator, extract, replicate, tuber, slice.|subject: found it together with controls or fryBatches; expected sample, when only some rows are about something else." },
        { "fryBatches", "[{\"when\": {\"column\": \"Run\", \"equals\": \"F\"}, \"batch\": {\"column\": \"Run\"}}]", "fryBatches: found fry batches; expected fry batches only in profiles of kind bench." },
        { "ignoredColumns", "[\"Glucose\"]", "ignoredColumns: found 'Glucose', which is read; expected columns the profile does not read." },
        { "badRows", "\"skip\"", "badRows: found 'skip'; expected one of refuse-file, park." },
    };

    [Theory]
    [MemberData(nameof(SugarFaults))]
    public void Parse_WhenAMemberIsWrong_NamesItsPath(string path, string value, string expected)
    {
        var json = SampleProfiles.Change(SampleProfiles.SugarJson, node => Set(node, path, value));

        var result = ProfileDocument.Parse(json, "p.json");

        Assert.False(result.IsValid);
        Assert.Equal(expected.Split('|').Select(sentence => "p.json, " + sentence), result.Describe());
    }

    [Fact]
    public void Parse_WhenTimeAndRowKeyAreMissing_RefusesControls()
    {
        var json = SampleProfiles.Change(SampleProfiles.SugarJson, node => node.AsObject().Remove("time"));

        Assert.Equal(
            ["p.json, rowKey: found nothing; expected columns that tell the control or fry batch rows of a run apart, or time."],
            ProfileDocument.Parse(json, "p.json").Describe());
    }

    [Theory]
    [InlineData("text.fields.1.start", "12", "text.fields[1]: found 'Run' over 'Sample'; expected fields that do not overlap.")]
    [InlineData("text.fields.1.name", "\"Sample\"", "text.fields[1].name: found 'Sample' again; expected every name once.|text.fields: found no 'Run'; expected every column the profile reads.")]
    [InlineData("text.fields", "[]", "text.fields: found nothing; expected the fields of a line with name, start and length.")]
    [InlineData("text.delimiter", "\";\"", "text.delimiter: found a member that has no meaning here; expected only layout, encoding, decimalMark, groupMark, exponent, commentPrefix, fields, skipLines.")]
    [InlineData("files.trailer", null, "files.trailer: found nothing; expected a text.")]
    [InlineData("quantities.0.column", "\"Weight\"", "text.fields: found no 'Weight'; expected every column the profile reads.|text.fields: found 'Mass', which is not read; expected columns the profile reads or lists under ignoredColumns.")]
    public void Parse_WhenFixedWidthIsWrong_NamesItsPath(string path, string? value, string expected)
    {
        var json = SampleProfiles.Change(SampleProfiles.FixedWidthJson, node => Set(node, path, value));

        Assert.Equal(expected.Split('|').Select(sentence => "p.json, " + sentence), ProfileDocument.Parse(json, "p.json").Describe());
    }

    [Theory]
    [InlineData("oneValueRows.map", "{}", "oneValueRows.map: found nothing; expected at least one name with its quantity.|text.columns: found 'Result', which is not read; expected columns the profile reads or lists under ignoredColumns.|text.columns: found 'Unit', which is not read; expected columns the profile reads or lists under ignoredColumns.")]
    [InlineData("oneValueRows.ignored", "[\"GLU\"]", "oneValueRows.ignored: found 'GLU', which is mapped; expected names that are not in the map.")]
    [InlineData("oneValueRows.map.GLU.unit", "\"lb\"", "oneValueRows.map.GLU.unit: found 'lb'; expected a unit of glucose_in_extract: g/L, g/l, mg/dL, mg/dl, mmol/L, mmol/l, mM.")]
    [InlineData("quantities", "[{\"quantity\":\"dilution_factor\",\"column\":\"Run\",\"unit\":\"1\"}]", "oneValueRows: found it together with quantities; expected one of the two.")]
    [InlineData("text.delimiter", "\",\"", "text.delimiter: found the decimal mark; expected another mark, or quotes around the cells.")]
    public void Parse_WhenOneValueRowsAreWrong_NamesTheirPath(string path, string value, string expected)
    {
        var json = SampleProfiles.Change(SampleProfiles.OneValueJson, node => Set(node, path, value));

        Assert.Equal(expected.Split('|').Select(sentence => "p.json, " + sentence), ProfileDocument.Parse(json, "p.json").Describe());
    }

    [Fact]
    public void Parse_WhenManyThingsAreWrong_ListsThemAll()
    {
        var json = SampleProfiles.Change(SampleProfiles.SugarJson, node =>
        {
            node["version"] = -1;
            node["text"]!["encoding"] = "ascii";
            node["time"]!["zone"] = "Nowhere";
            node["quantities"]![0]!["unit"] = "kg";
            node["extra"] = 1;
        });

        Assert.Equal(["version", "text.encoding", "time.zone", "quantities[0].unit", "extra"], ProfileDocument.Parse(json, "p").Faults.Select(fault => fault.Path));
    }

    [Fact]
    public void Parse_WhenNothingIsThere_ListsEverySectionOnce()
    {
        var paths = ProfileDocument.Parse("{}", "p").Faults.Select(fault => fault.Path).ToList();

        Assert.Equal(["schema", "name", "version", "kind", "identity", "instrument", "method", "text", "files", "quantities"], paths);
    }

    [Fact]
    public void Parse_WhenUnitOfALimitDiffers_KeepsTheLimitInTheCanonicalUnit()
    {
        var profile = SampleProfiles.Sugar(json => json["method"]!["limitsOfQuantitation"] = JsonNode.Parse("""{"glucose_in_extract": {"value": 0.5, "unit": "mg/dL"}}"""));

        Assert.Equal(0.005m, profile.Method.LimitsOfQuantitation["glucose_in_extract"]);
    }

    // Any one member of a good document replaced by something else: a profile or a list of faults, never an exception.
    [FsCheck.Xunit.Property(MaxTest = 300)]
    public bool Parse_WhenAnyMemberIsReplaced_NeverThrows(int which, int replacement)
    {
        string[] values = ["null", "1", "-1", "1e400", "\"\"", "\"x\"", "[]", "{}", "[1]", "[\"\"]", "true", "[[{}]]", "\"\\u0000\""];
        foreach (var document in new[] { SampleProfiles.SugarJson, SampleProfiles.BalanceJson, SampleProfiles.ColourJson, SampleProfiles.FixedWidthJson, SampleProfiles.OneValueJson })
        {
            var node = JsonNode.Parse(document)!;
            var places = Places(node).ToList();
            var (parent, key) = places[(int)((uint)which % places.Count)];
            var value = JsonNode.Parse(values[(uint)replacement % values.Length]);
            if (parent is JsonArray array)
            {
                array[int.Parse(key, System.Globalization.CultureInfo.InvariantCulture)] = value;
            }
            else
            {
                parent[key] = value;
            }

            var result = ProfileDocument.Parse(node.ToJsonString(), "p");
            if (result.IsValid == result.Faults.Count > 0)
            {
                return false;
            }
        }

        return true;
    }

    private static IEnumerable<(JsonNode Parent, string Key)> Places(JsonNode node) => node switch
    {
        JsonObject members => members.SelectMany(member => Inner(node, member.Key, member.Value)),
        JsonArray items => items.SelectMany((item, index) => Inner(node, index.ToString(System.Globalization.CultureInfo.InvariantCulture), item)),
        _ => [],
    };

    private static IEnumerable<(JsonNode Parent, string Key)> Inner(JsonNode parent, string key, JsonNode? value) =>
        new[] { (parent, key) }.Concat(value is null ? [] : Places(value));

    private static void Set(JsonNode node, string path, string? value)
    {
        var steps = path.Split('.');
        foreach (var step in steps[..^1])
        {
            node = int.TryParse(step, out var index) ? node[index]! : node[step]!;
        }

        if (value is null)
        {
            node.AsObject().Remove(steps[^1]);
        }
        else
        {
            node[steps[^1]] = JsonNode.Parse(value);
        }
    }
}

using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace LabPipeline.Station.Tests.Season;

/// <summary>A snippet of docs/specs/exports.md after it was run in a folder of exports.</summary>
/// <param name="Text">As the page prints it.</param>
/// <param name="MissingPackage">A package it needs that is not installed; it was not run then.</param>
/// <param name="Failure">What the program complained of; null where it ended well.</param>
/// <param name="Output">What the probe behind it printed.</param>
/// <param name="Expected">What it must print: the demonstration has 8 pulls of 48 plots, and 58 readings on an average sample.</param>
internal sealed partial record DocumentSnippet(string Text, string? MissingPackage, string? Failure, string Output, string Expected)
{
    public static async Task<IReadOnlyList<DocumentSnippet>> RunAllAsync(string language, string program, string folder)
    {
        var texts = Blocks().Matches(await File.ReadAllTextAsync(Page(), TestContext.Current.CancellationToken)).Where(match => match.Groups["language"].Value == language).Select(match => match.Groups["text"].Value);
        var run = new List<DocumentSnippet>();
        foreach (var text in texts)
        {
            run.Add(await RunAsync(language, program, folder, text));
        }

        return run;
    }

    private static async Task<DocumentSnippet> RunAsync(string language, string program, string folder, string text)
    {
        if (Packages().Match(text) is { Success: true } package && (await ProcessAsync(program, folder, Probe(language, package.Value))).Failure is not null)
        {
            return new DocumentSnippet(text, package.Value, null, "", "");
        }

        var (probe, expected) = (language, text) switch
        {
            ("r", _) when text.Contains("raw_value", StringComparison.Ordinal) => ("cat(nrow(d), any(grepl(\"^'\", r$raw_value)), sum(is.na(as.numeric(r$value))))", "384 FALSE 0"),
            ("r", _) when text.Contains("anova", StringComparison.Ordinal) => ("cat(nlevels(factor(p$clone)), nlevels(factor(p$treatment)))", "4 3"),
            ("r", _) => ("cat(nrow(d))", "384"),
            (_, _) when text.Contains("csv", StringComparison.Ordinal) => ("print(any(row['raw_value'].startswith(chr(39)) for row in rows), all(float(row['value']) == float(row['value']) for row in rows))", "False True"),
            (_, _) when text.Contains("sqlite3", StringComparison.Ordinal) => ("try:\n    w.execute('delete from trial')\nexcept sqlite3.OperationalError as fault:\n    print(len(rows), fault)", "384 attempt to write a readonly database"),
            _ => ("print(d.num_rows)", "384"),
        };
        var (output, failure) = await ProcessAsync(program, folder, text + probe + "\n");
        // A snippet that ends in a table prints it; the probe is the last line.
        return new DocumentSnippet(text, null, failure, output.TrimEnd().Split('\n')[^1], expected);
    }

    private static string Probe(string language, string package) => language == "r" ? $"loadNamespace('{package}')" : $"import {package}";

    private static async Task<(string Output, string? Failure)> ProcessAsync(string program, string folder, string text)
    {
        var script = Path.Combine(folder, "snippet.txt");
        await File.WriteAllTextAsync(script, text, TestContext.Current.CancellationToken);
        using var process = Process.Start(new ProcessStartInfo(program, [script]) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true })!;
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (output, process.ExitCode == 0 ? null : await errors);
    }

    private static string Page([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "docs", "specs", "exports.md");

    [GeneratedRegex(@"^```(?<language>r|python)\n(?<text>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Blocks();

    [GeneratedRegex("arrow(?=::)|readxl(?=::)|pyarrow")]
    private static partial Regex Packages();
}

namespace LabPipeline.Intake.Profiles;

/// <summary>Which files the profile is for, and when they are complete.</summary>
/// <remarks>
/// <c>Match</c>: patterns of file names: * stands for any characters, ? for one; case does not matter.
/// <c>TrailerText</c>: what the last line begins with, for <see cref="Completeness.Trailer"/>; otherwise null.
/// <c>QuietSeconds</c>: how long the file must keep its size and time before it is read.
/// </remarks>
public sealed record FileRule(IReadOnlyList<string> Match, Completeness Complete, string? TrailerText, int QuietSeconds)
{
    /// <summary>Whether the content itself shows that it is complete.</summary>
    public bool ContentShowsEnd => Complete is Completeness.FinalNewline or Completeness.Trailer;

    /// <summary>Whether <paramref name="fileName"/> (without folder) is one of this profile's files.</summary>
    public bool Matches(string fileName)
    {
        foreach (var pattern in Match)
        {
            if (Fits(pattern, fileName))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Fits(ReadOnlySpan<char> pattern, ReadOnlySpan<char> name)
    {
        int at = 0, position = 0, star = -1, retry = 0;
        while (position < name.Length)
        {
            if (at < pattern.Length && pattern[at] == '*')
            {
                star = at++;
                retry = position;
            }
            else if (at < pattern.Length && (pattern[at] == '?' || char.ToUpperInvariant(pattern[at]) == char.ToUpperInvariant(name[position])))
            {
                at++;
                position++;
            }
            else if (star >= 0)
            {
                at = star + 1;
                position = ++retry;
            }
            else
            {
                return false;
            }
        }

        return pattern[at..].Trim('*').IsEmpty;
    }
}

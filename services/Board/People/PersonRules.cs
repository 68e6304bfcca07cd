namespace LabPipeline.Board.People;

/// <summary>What a name and a password must be.</summary>
public static class PersonRules
{
    public const int LongestName = 40;

    /// <summary>Common practice, no source; longer is better and every character counts.</summary>
    public const int ShortestPassword = 12;

    public const int LongestPassword = 128;

    /// <summary>The name as it is stored.</summary>
    public static string Normal(string name) => name.Trim().ToLowerInvariant();

    /// <returns>What is wrong, or null.</returns>
    public static string? NameFault(string name)
    {
        var normal = Normal(name);
        return normal.Length is >= 2 and <= LongestName && char.IsAsciiLetterLower(normal[0])
            && normal.All(letter => char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter) || letter is '.' or '-')
            ? null
            : $"Found the name '{name}'; expected 2 to {LongestName} letters, digits, dots or dashes, a letter first.";
    }

    /// <returns>What is wrong, or null; the password itself is never repeated.</returns>
    public static string? PasswordFault(string name, string password)
    {
        if (password.Length is < ShortestPassword or > LongestPassword)
        {
            return $"The password has {password.Length} characters; expected {ShortestPassword} to {LongestPassword}: a few words in a row are easy to type.";
        }

        if (password.Contains(Normal(name), StringComparison.OrdinalIgnoreCase))
        {
            return "The password holds the name; choose one that does not.";
        }

        return password.Distinct().Count() < 5 ? "The password repeats a few characters; choose one with more of them." : null;
    }
}

namespace LabPipeline.Board.People;

/// <summary>Roles as the warehouse writes them and as policies are named.</summary>
public static class RoleNames
{
    public const string Look = "look";

    public const string Bench = "bench";

    public const string Manage = "manage";

    public const string Administer = "administer";

    /// <summary>All, the one that may least first.</summary>
    public static readonly IReadOnlyList<string> All = [Look, Bench, Manage, Administer];

    /// <returns>Null when <paramref name="name"/> is no role.</returns>
    public static Role? Find(string? name) => name switch
    {
        Look => Role.Look,
        Bench => Role.Bench,
        Manage => Role.Manage,
        Administer => Role.Administer,
        _ => null,
    };

    public static string Of(Role role) => All[(int)role - 1];
}

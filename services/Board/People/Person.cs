namespace LabPipeline.Board.People;

/// <summary>Somebody who may sign in.</summary>
public sealed record Person
{
    public int UserId { get; init; }

    /// <summary>Lower case; what is typed to sign in and what the change log names.</summary>
    public string Name { get; init; } = "";

    /// <summary>One of <see cref="RoleNames"/>.</summary>
    public string RoleName { get; init; } = "";

    public string PasswordHash { get; init; } = "";

    /// <summary>Changes with password and role; a sign-in that carries another one has ended.</summary>
    public string Stamp { get; init; } = "";

    public int Failures { get; init; }

    public DateTimeOffset? LockedUntil { get; init; }

    /// <summary>May not sign in any more; the name stays taken, because the change log speaks of it.</summary>
    public bool Closed { get; init; }

    public DateTimeOffset MadeAt { get; init; }

    public Role Role => RoleNames.Find(RoleName) ?? Role.Look;

    /// <summary>How the change log names the person.</summary>
    public string Subject => SubjectOf(Name);

    public static string SubjectOf(string name) => "person:" + name;
}

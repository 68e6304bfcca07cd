using LabPipeline.Warehouse;

namespace LabPipeline.Board.People;

/// <summary>People who may sign in. Nobody is ever deleted; a closed person keeps the name.</summary>
public sealed class PersonStore
{
    private static readonly SqlText FindByName = SqlText.Load<PersonStore>("find-user-by-name");
    private static readonly SqlText Find = SqlText.Load<PersonStore>("find-user");
    private static readonly SqlText List = SqlText.Load<PersonStore>("list-users");
    private static readonly SqlText Count = SqlText.Load<PersonStore>("count-users");
    private static readonly SqlText Insert = SqlText.Load<PersonStore>("insert-user");
    private static readonly SqlText NoteFailure = SqlText.Load<PersonStore>("note-sign-in-failure");
    private static readonly SqlText NoteSuccess = SqlText.Load<PersonStore>("note-sign-in");
    private static readonly SqlText UpdatePassword = SqlText.Load<PersonStore>("update-user-password");
    private static readonly SqlText UpdateRole = SqlText.Load<PersonStore>("update-user-role");

    public static Task<Person?> FindAsync(WarehouseSession session, string name) => session.FirstOrDefaultAsync<Person>(FindByName, new { name });

    public static Task<Person?> FindAsync(WarehouseSession session, int userId) => session.FirstOrDefaultAsync<Person>(Find, new { userId });

    public static Task<IReadOnlyList<Person>> ListAsync(WarehouseSession session) => session.QueryAsync<Person>(List);

    /// <summary>How many may sign in, in one role or, when it is null, in any.</summary>
    public static Task<int> CountAsync(WarehouseSession session, string? role) => session.ScalarAsync<int>(Count, new { role });

    public static Task AddAsync(WarehouseSession session, Person person) => session.ExecuteAsync(Insert, person);

    /// <summary>Counts a failed sign-in; the one that makes <paramref name="most"/> locks until <paramref name="until"/>.</summary>
    public static Task NoteFailureAsync(WarehouseSession session, int userId, int most, DateTimeOffset until) =>
        session.ExecuteAsync(NoteFailure, new { userId, most, until });

    public static Task NoteSignInAsync(WarehouseSession session, int userId) => session.ExecuteAsync(NoteSuccess, new { userId });

    public static Task SetPasswordAsync(WarehouseSession session, int userId, string hash, string stamp) =>
        session.ExecuteAsync(UpdatePassword, new { userId, hash, stamp });

    public static Task SetRoleAsync(WarehouseSession session, int userId, string role, bool closed, string stamp) =>
        session.ExecuteAsync(UpdateRole, new { userId, role, closed, stamp });
}

using System.Security.Cryptography;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace LabPipeline.Board.People;

/// <summary>Makes people, checks passwords, changes roles. Everything it does leaves a line in the change log; passwords never do.</summary>
public sealed class PeopleDesk(LabWarehouse warehouse, TimeProvider time) : IDisposable
{
    /// <summary>Failures in a row until a name is locked; common practice, no source.</summary>
    public const int MostFailures = 5;

    public static readonly TimeSpan LockedFor = TimeSpan.FromMinutes(15);

    // PBKDF2 with HMAC-SHA512: the count the OWASP password storage cheat sheet names (from memory).
    private const int Iterations = 210_000;

    private static readonly PasswordHasher<Person> Hasher =
        new(Options.Create(new PasswordHasherOptions { IterationCount = Iterations }));

    // An unknown name costs as much as a wrong password, so that the time of the answer names nobody.
    private static readonly Lazy<string> NobodysHash = new(() => Hasher.HashPassword(new Person(), NewStamp()));

    // One guess at a time: failures are counted before the next one is heard.
    private readonly SemaphoreSlim _oneGuess = new(1, 1);

    public Task<bool> IsEmptyAsync(CancellationToken cancellationToken) =>
        warehouse.ReadAsync(async session => await PersonStore.CountAsync(session, null).ConfigureAwait(false) == 0, cancellationToken);

    public Task<Person?> FindAsync(int userId, CancellationToken cancellationToken) =>
        warehouse.ReadAsync(session => PersonStore.FindAsync(session, userId), cancellationToken);

    public async Task<SignInResult> SignInAsync(string name, string password, CancellationToken cancellationToken)
    {
        await _oneGuess.WaitAsync(cancellationToken).ConfigureAwait(false);
        try
        {
            var found = await warehouse.ReadAsync(session => PersonStore.FindAsync(session, PersonRules.Normal(name)), cancellationToken).ConfigureAwait(false);
            var person = found is { Closed: false } ? found : null;
            var verdict = Verify(person, password);
            if (person is null)
            {
                return new SignInResult(null, null);
            }

            return person.LockedUntil is { } until && until > time.GetUtcNow()
                ? new SignInResult(null, until)
                : await NoteAsync(person, verdict, password, cancellationToken).ConfigureAwait(false);
        }
        finally
        {
            _oneGuess.Release();
        }
    }

    /// <returns>What is wrong, or null when the person is made.</returns>
    public Task<string?> AddAsync(string name, Role role, string password, string by, CancellationToken cancellationToken)
    {
        if ((PersonRules.NameFault(name) ?? PersonRules.PasswordFault(name, password)) is { } fault)
        {
            return Task.FromResult<string?>(fault);
        }

        var normal = PersonRules.Normal(name);
        var person = new Person { Name = normal, RoleName = RoleNames.Of(role), PasswordHash = Hash(password), Stamp = NewStamp(), MadeAt = time.GetUtcNow() };
        return warehouse.WriteAsync(
            async session =>
            {
                if (await PersonStore.FindAsync(session, normal).ConfigureAwait(false) is not null)
                {
                    return $"The name '{normal}' is taken; choose another.";
                }

                await PersonStore.AddAsync(session, person).ConfigureAwait(false);
                await LogAsync(session, by, "person made", normal, "role " + person.RoleName).ConfigureAwait(false);
                return null;
            },
            cancellationToken);
    }

    /// <summary>Sets a new password; every sign-in of the person ends.</summary>
    /// <returns>What is wrong, or null.</returns>
    public Task<string?> SetPasswordAsync(string name, string password, string by, CancellationToken cancellationToken)
    {
        if (PersonRules.PasswordFault(name, password) is { } fault)
        {
            return Task.FromResult<string?>(fault);
        }

        var hash = Hash(password);
        return ChangeAsync(
            name,
            async (session, person) =>
            {
                await PersonStore.SetPasswordAsync(session, person.UserId, hash, NewStamp()).ConfigureAwait(false);
                await LogAsync(session, by, "password set", person.Name, by == person.Name ? "by the person" : "by another").ConfigureAwait(false);
                return null;
            },
            cancellationToken);
    }

    /// <summary>Sets the role, and whether the person may sign in; every sign-in of the person ends.</summary>
    /// <returns>What is wrong, or null.</returns>
    public Task<string?> SetRoleAsync(string name, Role role, bool closed, string by, CancellationToken cancellationToken) => ChangeAsync(
        name,
        async (session, person) =>
        {
            var stays = role == Role.Administer && !closed;
            if (person is { Role: Role.Administer, Closed: false } && !stays
                && await PersonStore.CountAsync(session, RoleNames.Administer).ConfigureAwait(false) == 1)
            {
                return $"'{person.Name}' is the only administrator; make another first.";
            }

            await PersonStore.SetRoleAsync(session, person.UserId, RoleNames.Of(role), closed, NewStamp()).ConfigureAwait(false);
            await LogAsync(session, by, closed ? "person closed" : "role set", person.Name, "role " + RoleNames.Of(role)).ConfigureAwait(false);
            return null;
        },
        cancellationToken);

    public void Dispose() => _oneGuess.Dispose();

    private static string NewStamp() => RandomNumberGenerator.GetHexString(32, lowercase: true);

    private static string Hash(string password) => Hasher.HashPassword(new Person(), password);

    private static PasswordVerificationResult Verify(Person? person, string password)
    {
        var verdict = Hasher.VerifyHashedPassword(person ?? new Person(), person?.PasswordHash ?? NobodysHash.Value, password);
        return person is null ? PasswordVerificationResult.Failed : verdict;
    }

    private Task<SignInResult> NoteAsync(Person person, PasswordVerificationResult verdict, string password, CancellationToken cancellationToken)
    {
        var better = verdict == PasswordVerificationResult.SuccessRehashNeeded ? Hash(password) : null;
        return warehouse.WriteAsync(
            async session =>
            {
                if (verdict == PasswordVerificationResult.Failed)
                {
                    await PersonStore.NoteFailureAsync(session, person.UserId, MostFailures, time.GetUtcNow() + LockedFor).ConfigureAwait(false);
                    var after = await PersonStore.FindAsync(session, person.UserId).ConfigureAwait(false);
                    var what = after?.LockedUntil is null ? "sign-in refused" : "locked after failed sign-ins";
                    await LogAsync(session, person.Name, what, person.Name, "wrong password").ConfigureAwait(false);
                    return new SignInResult(null, after?.LockedUntil);
                }

                await PersonStore.NoteSignInAsync(session, person.UserId).ConfigureAwait(false);
                if (better is not null)
                {
                    await PersonStore.SetPasswordAsync(session, person.UserId, better, person.Stamp).ConfigureAwait(false);
                }

                await LogAsync(session, person.Name, "signed in", person.Name, "with password").ConfigureAwait(false);
                return new SignInResult(person, null);
            },
            cancellationToken);
    }

    private Task<string?> ChangeAsync(string name, Func<WarehouseSession, Person, Task<string?>> change, CancellationToken cancellationToken) => warehouse.WriteAsync(
        async session => await PersonStore.FindAsync(session, PersonRules.Normal(name)).ConfigureAwait(false) is { } person
            ? await change(session, person).ConfigureAwait(false)
            : $"Nobody is called '{PersonRules.Normal(name)}'.",
        cancellationToken);

    private Task LogAsync(WarehouseSession session, string who, string what, string name, string why) => ChangeLogStore.AddAsync(
        session, new Change { At = time.GetUtcNow(), Who = who, What = what, Subject = Person.SubjectOf(name), Why = why });
}

using LabPipeline.Intake.Reading;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Intake.Profiles;

/// <summary>Finds what is wrong between the sections of a profile.</summary>
internal static class ProfileChecks
{
    public static IEnumerable<ProfileFault> Find(Profile profile) =>
    [
        .. Quantities(profile), .. Subjects(profile), .. RowKey(profile), .. Columns(profile),
    ];

    private static IEnumerable<ProfileFault> Quantities(Profile profile)
    {
        if (profile.Quantities.Count == 0 && profile.OneValueRows is null)
        {
            yield return new ProfileFault("quantities", "nothing", "at least one quantity, or oneValueRows");
        }

        if (profile.Quantities.Count > 0 && profile.OneValueRows is not null)
        {
            yield return new ProfileFault("oneValueRows", "it together with quantities", "one of the two");
        }
    }

    private static IEnumerable<ProfileFault> Subjects(Profile profile)
    {
        if (profile.Subject != ReadingSubject.Sample && profile.Controls.Count + profile.FryBatches.Count > 0)
        {
            yield return new ProfileFault("subject", "it together with controls or fryBatches", "sample, when only some rows are about something else");
        }

        if ((profile.Subject == ReadingSubject.FryBatch || profile.FryBatches.Count > 0) && profile.Kind != QuantityKind.Bench)
        {
            yield return new ProfileFault(profile.FryBatches.Count > 0 ? "fryBatches" : "subject", "fry batches", "fry batches only in profiles of kind bench");
        }
    }

    private static IEnumerable<ProfileFault> RowKey(Profile profile)
    {
        var hasOthers = profile.Subject != ReadingSubject.Sample || profile.Controls.Count + profile.FryBatches.Count > 0;
        if (hasOthers && profile.RowKey.Count == 0 && profile.Time is null)
        {
            // A control is measured many times in a run; without time or number its checks would be taken for one.
            yield return new ProfileFault("rowKey", "nothing", "columns that tell the control or fry batch rows of a run apart, or time");
        }
    }

    private static IEnumerable<ProfileFault> Columns(Profile profile)
    {
        var read = ProfileColumns.ReadBy(profile);
        foreach (var name in profile.IgnoredColumns.Intersect(read, StringComparer.Ordinal))
        {
            yield return new ProfileFault("ignoredColumns", $"'{name}', which is read", "columns the profile does not read");
        }

        var (path, named) = profile.Text switch
        {
            { Columns.Count: > 0 } text => ("text.columns", text.Columns),
            { Fields.Count: > 0 } text => ("text.fields", text.Fields.Select(field => field.Name)),
            _ => ("", read),
        };
        foreach (var name in read.Except(named, StringComparer.Ordinal).Where(name => name.Length > 0))
        {
            yield return new ProfileFault(path, $"no '{name}'", "every column the profile reads");
        }

        if (path.Length > 0 && profile.UnknownColumns == UnknownColumns.Refuse)
        {
            foreach (var name in named.Except(read, StringComparer.Ordinal).Except(profile.IgnoredColumns, StringComparer.Ordinal))
            {
                yield return new ProfileFault(path, $"'{name}', which is not read", "columns the profile reads or lists under ignoredColumns");
            }
        }
    }
}

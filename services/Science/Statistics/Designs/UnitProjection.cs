using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>An orthonormal basis of the rows, split by unit: grand mean, then each unit, then rows within the smallest.</summary>
internal sealed class UnitProjection
{
    private readonly HouseholderQr _qr;
    private readonly int[] _stratumOf;

    public UnitProjection(ModelData data, IReadOnlyList<Term> units)
    {
        var ones = new double[data.Rows];
        Array.Fill(ones, 1);
        var columns = new List<double[]> { ones };
        var owners = new List<int> { -1 };
        for (var unit = 0; unit < units.Count; unit++)
        {
            var (groups, count) = data.GroupsOf(units[unit]);
            for (var group = 0; group < count; group++)
            {
                columns.Add([.. groups.Select(found => found == group ? 1.0 : 0.0)]);
                owners.Add(unit);
            }
        }

        _qr = HouseholderQr.Factor(columns);
        _stratumOf = [.. Enumerable.Range(0, data.Rows).Select(row => row < _qr.Rank ? owners[_qr.Kept[row]] : units.Count)];
        Names = [.. units.Select(unit => unit.Name), Stratum.Within];
    }

    /// <summary>Names of the strata, without the grand mean.</summary>
    public IReadOnlyList<string> Names { get; }

    public int DfOf(int stratum) => _stratumOf.Count(owner => owner == stratum);

    /// <summary>The vector's coordinates in each stratum.</summary>
    public double[][] Split(double[] vector)
    {
        var turned = (double[])vector.Clone();
        _qr.ApplyTransposed(turned);
        return [.. Enumerable.Range(0, Names.Count).Select(stratum => turned.Where((_, row) => _stratumOf[row] == stratum).ToArray())];
    }
}

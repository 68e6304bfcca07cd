using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// The covariance of the fixed effects, its slopes by the covariance parameters, and the Kenward-Roger correction, from <see cref="VarianceSums"/>.
/// Bases are numbered: 0 is E, then D^-1 g_i of each parameter of the pulls, and last the one the correction adds.
/// </summary>
internal sealed class InferenceForms(VarianceSums sums, int randomTerms)
{
    private readonly Matrix _covariance = sums.Covariance;

    /// <summary>D^-1 g_i of each parameter of the pulls.</summary>
    public Matrix[][] Loaded { get; } = [.. sums.Pulls.Select(pull => pull.Across.Zip(sums.Inverses, (across, inverse) => inverse.Times(across)).ToArray())];

    private int Last => sums.Pulls.Count + 1;

    /// <summary>(X'V^-1X)^-1 = D^-1 + E N E'.</summary>
    public BlockedForm Plain() => new BlockedForm { Blocks = sums.Inverses }.With(0, 0, _covariance);

    /// <summary>O V_i O' of each parameter: E J_i J_i' E' of a random term; D^-1 a_i D^-1 and what the units add of the pulls.</summary>
    public BlockedForm[] Sensitivity() =>
    [
        .. Enumerable.Range(0, randomTerms).Select(term => new BlockedForm().With(0, 0, sums.TurnedAround(owner => owner == term ? 1 : 0))),
        .. sums.Pulls.Select((pull, index) => new BlockedForm { Blocks = Around(pull.Effects) }
            .WithMirrored(index + 1, 0, _covariance.Scaled(-1))
            .With(0, 0, Both(pull.Units))),
    ];

    /// <summary>The sum over i and j of W_ij O V_i P V_j O', and the basis it needs beside the others.</summary>
    public (BlockedForm Form, Matrix[] Basis) Correction(Matrix uncertainty)
    {
        var products = sums.Products(uncertainty);
        var (effects, across, units) = Reduce(products, uncertainty);
        var form = new BlockedForm { Blocks = Around(effects) }
            .WithMirrored(Last, 0, _covariance.Scaled(-1))
            .With(0, 0, Both(units))
            .With(0, 0, sums.Turned.Times(sums.WeightedSpread(uncertainty)).Times(sums.Turned.Transposed()));
        for (var i = 0; i < sums.Pulls.Count; i++)
        {
            var column = randomTerms + i;
            var drawn = sums.TurnedAround(owner => uncertainty[owner, column]);
            form.WithMirrored(0, i + 1, drawn).WithMirrored(0, 0, drawn.Times(sums.Pulls[i].Units).Times(_covariance).Scaled(-1));
            for (var j = 0; j < sums.Pulls.Count; j++)
            {
                var weight = uncertainty[column, randomTerms + j];
                form.With(i + 1, j + 1, _covariance.Scaled(-weight))
                    .WithMirrored(i + 1, 0, Both(sums.Pulls[j].Units).Scaled(weight))
                    .With(0, 0, Both(sums.Pulls[i].Units).Times(sums.Pulls[j].Units).Times(_covariance).Scaled(-weight));
            }
        }

        return (form, [.. across.Zip(sums.Inverses, (part, inverse) => inverse.Times(part))]);
    }

    /// <summary>The products freed of the fixed effects: minus a_i D^-1 a_j, a_i D^-1 g_j and g_i' D^-1 g_j.</summary>
    private WeightedSums Reduce(WeightedSums products, Matrix uncertainty)
    {
        for (var i = 0; i < sums.Pulls.Count; i++)
        {
            for (var j = 0; j < sums.Pulls.Count; j++)
            {
                var weight = -uncertainty[randomTerms + i, randomTerms + j];
                for (var block = 0; block < products.Effects.Length; block++)
                {
                    var carried = sums.Pulls[i].Effects[block].Times(sums.Inverses[block]);
                    products.Effects[block].Add(carried.Times(sums.Pulls[j].Effects[block]), weight);
                    products.Across[block].Add(carried.Times(sums.Pulls[j].Across[block]), weight);
                    products.Units.AddAt(sums.UnitsOf(block), sums.UnitsOf(block), sums.Pulls[i].Across[block].TransposedTimes(Loaded[j][block]), weight);
                }
            }
        }

        return products;
    }

    private Matrix Both(Matrix units) => _covariance.Times(units).Times(_covariance);

    private Matrix[] Around(Matrix[] effects) => [.. effects.Zip(sums.Inverses, (part, inverse) => inverse.Times(part).Times(inverse))];
}

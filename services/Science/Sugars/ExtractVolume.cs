using LabPipeline.Science.Units;

namespace LabPipeline.Science.Sugars;

/// <summary>Volume the sugars of a tissue sample are spread over.</summary>
public static class ExtractVolume
{
    /// <summary>Volume in mL when the extract was made up to a mark: the mark itself.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or less.</exception>
    public static decimal MadeUpTo(decimal markMillilitres) => Require.Positive(markMillilitres, nameof(markMillilitres));

    /// <summary>Volume in mL when solvent was added to the tissue: V = v + m (1 - DM/100) / rho, tissue water counted at rho = 1 g/mL.</summary>
    /// <remarks>
    /// Leaving the tissue water out makes results 10 to 20 % low. Contraction and the volume of dissolved solids are neglected (common practice, no source).
    /// </remarks>
    /// <param name="solventMillilitres">Solvent added, above zero.</param>
    /// <param name="freshMassGrams">Fresh mass of the tissue, above zero.</param>
    /// <param name="dryMatterPercent">Dry matter of the tissue in % of fresh weight, 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static decimal SolventAdded(decimal solventMillilitres, decimal freshMassGrams, decimal dryMatterPercent)
    {
        var solvent = Require.Positive(solventMillilitres, nameof(solventMillilitres));
        var mass = Require.Positive(freshMassGrams, nameof(freshMassGrams));
        var dryMatter = Require.Between(dryMatterPercent, 0m, 100m, nameof(dryMatterPercent));
        return solvent + (mass * (1m - (dryMatter / 100m)));
    }
}

namespace LabPipeline.Reporting.Bench;

/// <summary>Reminders at the foot of bench papers. They defer to those who are responsible.</summary>
internal static class Cautions
{
    private const string Defer = "These are reminders only: local codes, the safety officer and trained staff decide.";

    public static IReadOnlyList<string> Storage { get; } =
    [
        "Storage bays: oxygen may be low and carbon dioxide high; check the air before entering, mind sprout-inhibitor vapour and vehicles, never enter alone. Lift with two.",
        Defer,
    ];

    public static IReadOnlyList<string> Analysis { get; } =
    [
        "Blades: cut-resistant gloves and guards, hands out of the peeler's drum, disconnect before cleaning. Reagents: data sheets, eye protection, waste rules; enzyme dust sensitises.",
        "Wet floors and electricity: residual-current protection, dry hands.",
        Defer,
    ];

    public static IReadOnlyList<string> Frying { get; } =
    [
        "Hot oil (about 182 °C) burns deeply: dry the slices, lower the basket slowly, never overfill, never leave it alone, never move or strain hot oil. No water or ice near it.",
        "Grease fire: cut the heat, lid or wet-chemical extinguisher, NEVER WATER; leave and call for help if in doubt. Blades: cut-resistant gloves and guards.",
        "Research chips are not food: label them so. " + Defer,
    ];
}

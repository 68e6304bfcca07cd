namespace LabPipeline.Station.Demo;

/// <summary>What was wrong with an analyser during a session.</summary>
internal enum SugarFlaw
{
    None = 0,

    /// <summary>It reads higher and higher; the closing control shows it.</summary>
    Drift,

    /// <summary>The invertase is old: part of the sucrose stays unsplit.</summary>
    WornEnzyme,

    /// <summary>Someone set it to mmol/L while the columns still say mg/dL.</summary>
    OtherUnit,
}

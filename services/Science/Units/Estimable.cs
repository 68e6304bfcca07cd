namespace LabPipeline.Science.Units;

/// <summary>A number, or the reason why it cannot be estimated from what was given.</summary>
/// <typeparam name="T">The type of the number.</typeparam>
public readonly record struct Estimable<T>
    where T : struct
{
    private readonly T _value;
    private readonly string? _whyNot;

    private Estimable(T value, string? whyNot)
    {
        _value = value;
        _whyNot = whyNot;
        IsEstimated = whyNot is null;
    }

    /// <summary>Whether there is a number. False for <c>default</c>.</summary>
    public bool IsEstimated { get; }

    /// <summary>Why there is no number; empty when there is one.</summary>
    public string WhyNot => IsEstimated ? "" : _whyNot ?? "never estimated";

    /// <summary>The number.</summary>
    /// <exception cref="InvalidOperationException">There is none; the message says why.</exception>
    public T Value => IsEstimated ? _value : throw new InvalidOperationException($"Not estimable: {WhyNot}.");

    /// <summary>The number, or null.</summary>
    public T? OrNull => IsEstimated ? _value : null;

    public static implicit operator Estimable<T>(T value) => From(value);

    internal static Estimable<T> From(T value) => new(value, null);

    internal static Estimable<T> Not(string why) => new(default, why);
}

using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>Why a result could not be computed from readings that are there. Readings that have not come yet are no fault.</summary>
/// <param name="Quantity">The result that is missing.</param>
/// <param name="Where">The piece concerned, such as <c>extract A</c>; empty for the whole sample.</param>
/// <param name="Found">What was found and what was expected, without a full stop.</param>
/// <param name="Advice">What to do now.</param>
/// <param name="IsUnusable">True when a reading itself is wrong; false when only a statement about the method is missing.</param>
public sealed record ResultFault(Quantity Quantity, string Where, string Found, string Advice, bool IsUnusable);

namespace LabPipeline.Reporting.Printing;

/// <summary>Something cannot be printed as asked; the message is for the person who asked.</summary>
public sealed class PrintException(string message) : Exception(message);

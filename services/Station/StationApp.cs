using LabPipeline.Station.Commands;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station;

/// <summary>The command line.</summary>
public static class StationApp
{
    private const int PipedWidth = 180;

    public static Task<int> RunAsync(string[] args)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings());
        if (Console.IsOutputRedirected)
        {
            // Nobody watches a pipe's width; a narrow table would only be cut.
            console.Profile.Width = PipedWidth;
        }

        return RunAsync(args, console, Console.Error);
    }

    /// <summary>Runs one command against <paramref name="console"/>; errors go to <paramref name="errors"/> with their own exit code.</summary>
    public static Task<int> RunAsync(string[] args, IAnsiConsole console, TextWriter errors)
    {
        var app = new CommandApp();
        app.Configure(configuration =>
        {
            configuration.SetApplicationName("station");
            configuration.ConfigureConsole(console);
            configuration.Settings.Registrar.RegisterInstance(console);
            configuration.SetExceptionHandler((exception, _) => Explain(exception, errors));
            AddCommands(configuration);
        });
        return app.RunAsync(args);
    }

    private static void AddCommands(IConfigurator configuration)
    {
        configuration.AddCommand<RunCommand>("run").WithDescription("Run every service and the board in this process until stopped.");
        configuration.AddCommand<BoardCommand>("board").WithDescription("Open the board, the lab's web pages, alone; settings follow after '--'.");
        configuration.AddBranch("person", person =>
        {
            person.SetDescription("People who may sign in to the board.");
            person.AddCommand<PersonAddCommand>("add").WithDescription("Make somebody who may sign in; the first administrator is made so.");
            person.AddCommand<PersonPasswordCommand>("password").WithDescription("Set somebody's password anew.");
        });
        configuration.AddCommand<DemoCommand>("demo").WithDescription("Set up an invented season, process it and show what was found.");
        configuration.AddBranch("plan", plan =>
        {
            plan.SetDescription("Trial plans.");
            plan.AddCommand<PlanCheckCommand>("check").WithDescription("List every fault of a plan document; load nothing.");
            plan.AddCommand<PlanLoadCommand>("load").WithDescription("Load a trial plan and register its samples.");
        });
        configuration.AddCommand<SamplesCommand>("samples").WithDescription("Write the sample list of a plan, with barcodes, as CSV.");
        configuration.AddCommand<DryRunCommand>("dry-run").WithDescription("Read a file under a profile and show the first rows as they would be stored.");
        configuration.AddCommand<ArrivalsCommand>("arrivals").WithDescription("List files that arrived, with their state and reason.");
        configuration.AddCommand<TrailCommand>("trail").WithDescription("Follow a sample from its barcode to results, readings, files and lines.");
        configuration.AddCommand<ExportCommand>("export").WithDescription("Write plot means, sample results or readings of a trial as CSV.");
        configuration.AddCommand<AlertsCommand>("alerts").WithDescription("List quality alerts.");
        configuration.AddCommand<SeenCommand>("seen").WithDescription("Note that you have seen an alert.");
        configuration.AddCommand<SettleCommand>("settle").WithDescription("Settle an alert with a reason.");
        configuration.AddCommand<TakeOutCommand>("take-out").WithDescription("Take a file out again: its readings no longer count.");
        configuration.AddCommand<AcceptCommand>("accept").WithDescription("Accept an edited re-export: its values take effect.");
        configuration.AddCommand<SpreadCommand>("spread").WithDescription("Show the lab's own repeatability from its duplicates beside the one in use, and keep it.");
    }

    private static int Explain(Exception exception, TextWriter errors)
    {
        errors.WriteLine(exception is OperationCanceledException ? "Stopped." : exception.Message);
        return exception is StationException known ? known.ExitCode : ExitCode.Failed;
    }
}

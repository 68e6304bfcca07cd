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
        configuration.AddCommand<MigrateCommand>("migrate").WithDescription("Make or upgrade the warehouse's tables; in SQL Server also its roles.");
        configuration.AddCommand<DemoCommand>("demo").WithDescription("Set up an invented season, process it and show what was found.");
        configuration.AddBranch("plan", plan =>
        {
            plan.SetDescription("Trial plans.");
            plan.AddCommand<PlanCheckCommand>("check").WithDescription("List every fault of a plan document; load nothing.");
            plan.AddCommand<PlanLoadCommand>("load").WithDescription("Load a trial plan and register its samples.");
            plan.AddCommand<PlanDrawCommand>("draw").WithDescription("Draw the layout of a trial with a stated seed; write plan and plot map.");
            plan.AddCommand<PlanAdviceCommand>("advice").WithDescription("Say how many blocks the variation of an earlier trial asks for.");
        });
        configuration.AddCommand<SamplesCommand>("samples").WithDescription("Write the sample list of a plan, with barcodes, as CSV.");
        configuration.AddCommand<CalendarCommand>("calendar").WithDescription("Write the pulls of plans as a calendar file.");
        configuration.AddCommand<LabelsCommand>("labels").WithDescription("Print tags or half labels of a pull as PDF.");
        configuration.AddCommand<PickListCommand>("pick-list").WithDescription("Print which bags to bring for a pull, by bay and plot.");
        configuration.AddCommand<BenchOrderCommand>("bench-order").WithDescription("Draw, keep and print the order of analysis or frying of a pull.");
        configuration.AddCommand<DryRunCommand>("dry-run").WithDescription("Read a file under a profile and show the first rows as they would be stored.");
        configuration.AddCommand<ArrivalsCommand>("arrivals").WithDescription("List files that arrived, with their state and reason.");
        configuration.AddCommand<TrailCommand>("trail").WithDescription("Follow a sample from its barcode to results, readings, files and lines.");
        configuration.AddCommand<ExportCommand>("export").WithDescription("Write plot means, sample results or readings of a trial as CSV.");
        configuration.AddBranch("season", season =>
        {
            season.SetDescription("How far a season is, and its answer.");
            season.AddCommand<SeasonGridCommand>("grid").WithDescription("Print what is done, late, missing or excluded of each plot, pull and measurement.");
            season.AddCommand<SeasonReportCommand>("report").WithDescription("Write the season report of a trial as one page; lock it, make it again, print it to PDF.");
            season.AddCommand<SeasonTableCommand>("table").WithDescription("Show analyses of variance and means of one result.");
        });
        configuration.AddCommand<EvidenceCommand>("evidence").WithDescription("Follow a number of a season report to readings, files and lines, and to who did what about them.");
        configuration.AddCommand<AlertsCommand>("alerts").WithDescription("List quality alerts.");
        configuration.AddCommand<SeenCommand>("seen").WithDescription("Note that you have seen an alert.");
        configuration.AddCommand<SettleCommand>("settle").WithDescription("Settle an alert with a reason.");
        configuration.AddCommand<ParkedCommand>("parked").WithDescription("List messages between services that could not be handled, with the reason.");
        configuration.AddCommand<ReplayCommand>("replay").WithDescription("Hand parked messages over again.");
        configuration.AddCommand<BackupCommand>("backup").WithDescription("Copy the warehouse while everything runs.");
        configuration.AddCommand<AuditCommand>("audit").WithDescription("Hold the warehouse against the archive, line by line.");
        configuration.AddCommand<RebuildCommand>("rebuild").WithDescription("Make a damaged or old warehouse whole from a backup and the archive.");
        configuration.AddCommand<TakeOutCommand>("take-out").WithDescription("Take a file out again: its readings no longer count.");
        configuration.AddCommand<AcceptCommand>("accept").WithDescription("Accept an edited re-export: its values take effect.");
        configuration.AddCommand<SetAsideCommand>("set-aside").WithDescription("Set readings of a sample aside for a physical reason.");
        configuration.AddCommand<NoMoreExtractsCommand>("no-more-extracts").WithDescription("Note that a sample has no tissue left for another extract.");
        AddQualityBranches(configuration);
        configuration.AddCommand<SpreadCommand>("spread").WithDescription("Show the lab's own repeatability from its duplicates beside the one in use, and keep it.");
    }

    private static void AddQualityBranches(IConfigurator configuration)
    {
        configuration.AddBranch("controls", controls =>
        {
            controls.SetDescription("Control checks of instruments.");
            controls.AddCommand<ControlsListCommand>("list").WithDescription("List control charts with their limits.");
            controls.AddCommand<ControlsTargetCommand>("target").WithDescription("State the target of a control and its tolerance.");
            controls.AddCommand<ControlsFreezeCommand>("freeze").WithDescription("Freeze limits from 20 runs or more.");
            controls.AddCommand<ControlsReleaseCommand>("release").WithDescription("Release the readings of a run although a control failed.");
        });
        configuration.AddBranch("thresholds", thresholds =>
        {
            thresholds.SetDescription("Limits a trial sets for itself.");
            thresholds.AddCommand<ThresholdsListCommand>("list").WithDescription("List thresholds with their history.");
            thresholds.AddCommand<ThresholdsSetCommand>("set").WithDescription("Set a threshold of a trial.");
        });
    }

    private static int Explain(Exception exception, TextWriter errors)
    {
        errors.WriteLine(exception is OperationCanceledException ? "Stopped." : exception.Message);
        return exception is StationException known ? known.ExitCode : ExitCode.Failed;
    }
}

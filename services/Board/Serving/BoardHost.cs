using System.Data.Common;
using LabPipeline.Board.People;
using LabPipeline.Hosting;
using Microsoft.Extensions.Options;

namespace LabPipeline.Board.Serving;

/// <summary>Puts the board together: the warehouse to read from, the pages, and one address.</summary>
public static class BoardHost
{
    /// <summary>Runs the board until the process is told to stop; what keeps it from starting is one line for the person who started it.</summary>
    /// <returns>The exit code.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter errors)
    {
        try
        {
            var app = Build(args, TimeProvider.System);
            await using (app)
            {
                await StartAsync(app, CancellationToken.None);
                await output.WriteLineAsync($"The board is open at {string.Join(" and ", app.Urls)}; Ctrl+C closes it.");
                await app.WaitForShutdownAsync();
                return 0;
            }
        }
        catch (Exception exception) when (IsForThePerson(exception))
        {
            await errors.WriteLineAsync($"The board does not start. {exception.Message}");
            return 1;
        }
    }

    /// <summary>Whether what keeps the board from starting is something the person at the keyboard can change.</summary>
    public static bool IsForThePerson(Exception exception) => exception is OptionsValidationException or InvalidOperationException or IOException
        or UnauthorizedAccessException or DbException or System.Security.Cryptography.CryptographicException;

    public static WebApplication Build(string[] args, TimeProvider time)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = args,
            ApplicationName = typeof(BoardHost).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
        });
        builder.Services.AddSingleton(time);
        builder.Services.AddSingleton<LabClock>();
        LabHost.ComposeReader(builder);
        BoardServices.Add(builder);
        var app = builder.Build();
        BoardRoutes.Use(app);
        return app;
    }

    /// <summary>Brings the warehouse to the newest schema and opens the address.</summary>
    /// <exception cref="OptionsValidationException">A setting is wrong; nothing was created.</exception>
    /// <exception cref="InvalidOperationException">The network could reach a board that nobody can sign in to.</exception>
    public static async Task StartAsync(WebApplication app, CancellationToken cancellationToken)
    {
        var options = app.Services.GetRequiredService<IOptions<BoardOptions>>().Value;
        app.Urls.Add(options.Url);
        await LabHost.PrepareAsync(app.Services, cancellationToken);
        if (!options.IsLoopback && await app.Services.GetRequiredService<PeopleDesk>().IsEmptyAsync(cancellationToken))
        {
            throw new InvalidOperationException(
                $"Board:Url is '{options.Url}', which the network can reach, and nobody may sign in yet; make the first administrator with 'station person add NAME --role administer'.");
        }

        await app.StartAsync(cancellationToken);
    }
}

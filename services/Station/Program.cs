using LabPipeline.Station;

return await StationApp.RunAsync(args);
